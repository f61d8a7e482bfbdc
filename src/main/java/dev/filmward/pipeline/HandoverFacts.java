package dev.filmward.pipeline;

import dev.filmward.intake.Words;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.FileEntry;
import dev.filmward.store.ShiftFactTable;
import dev.filmward.store.ShiftFactTable.Changed;
import dev.filmward.store.ShiftNote;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The sections of a handover that tell of settings, files and notes. Stateless. */
final class HandoverFacts {
  /** What the audit chain tells that versions do not. */
  private static final Set<String> SETTINGS =
      Set.of(
          "structures",
          "mapping",
          "mappings",
          "shifts",
          "hold",
          "line",
          "causes",
          "checks",
          "telling",
          "correct",
          "mend",
          "thin");

  private HandoverFacts() {}

  static List<Item> settings(HandoverScope scope) {
    ShiftFactTable facts = facts(scope);
    List<Item> items = new ArrayList<>();
    for (Changed limits : facts.limits()) {
      add(scope, limits, "Limits", limits.state(), items);
    }
    for (Changed tests : facts.tests()) {
      add(scope, tests, "Tests", "in force", items);
    }
    facts.audited().stream()
        .filter(entry -> SETTINGS.contains(entry.action()))
        .map(HandoverFacts::audited)
        .forEach(items::add);
    return items;
  }

  private static void add(
      HandoverScope scope, Changed changed, String what, String state, List<Item> items) {
    if (scope.covers(changed.line())) {
      items.add(
          new Item(
              what + " " + changed.line() + " " + changed.structure() + " " + changed.at(),
              changed.line(),
              what + " of " + changed.structure() + ", version " + changed.version(),
              state,
              changed.by() + ": " + changed.reason(),
              Optional.of(changed.at())));
    }
  }

  private static Item audited(AuditEntry entry) {
    boolean isWholeFile = entry.action().equals("structures");
    String first = isWholeFile ? "" : entry.detail().lines().findFirst().orElse("");
    return new Item(
        entry.action() + " " + entry.subject() + " " + entry.at(),
        "",
        entry.subject(),
        entry.action(),
        entry.by() + (first.isEmpty() ? "" : ": " + Words.cut(first)),
        Optional.of(entry.at()));
  }

  /** A file that was refused belongs to no line, so all of them are told. */
  static List<Item> files(HandoverScope scope) {
    return facts(scope).troubledFiles().stream()
        .map(HandoverFacts::file)
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<Item> file(FileEntry file) {
    long open = file.counts().quarantined() - file.mended();
    if (file.refusal().isEmpty() && open <= 0) {
      return Optional.empty();
    }
    String state = file.refusal().isPresent() ? "refused" : "in quarantine";
    String detail =
        file.refusal().orElse(Words.count(open, "reading") + " of " + file.counts().readings());
    return Optional.of(
        new Item(
            "file " + file.id(), "", file.name(), state, detail, Optional.of(file.receivedAt())));
  }

  static List<Item> notes(HandoverScope scope) {
    return items(
        scope,
        scope.tables().shiftNotes().within(scope.shift().from(), scope.shift().to()).stream());
  }

  static List<Item> carriedOver(HandoverScope scope) {
    return items(scope, scope.tables().shiftNotes().carriedOver(scope.shift().from()).stream());
  }

  private static List<Item> items(HandoverScope scope, Stream<ShiftNote> notes) {
    return notes.filter(note -> scope.covers(note.line())).map(HandoverFacts::note).toList();
  }

  private static Item note(ShiftNote note) {
    String state =
        note.settled().isPresent()
            ? "settled"
            : note.kind() == ShiftNote.Kind.FOLLOW_UP ? "to do" : "note";
    return new Item(
        "note " + note.id(),
        note.line(),
        note.text(),
        state,
        note.by()
            + (note.roll().isEmpty() ? "" : ", roll " + note.roll())
            + note.settled()
                .map(settled -> "; settled by " + settled.by() + ": " + settled.outcome())
                .orElse(""),
        Optional.of(note.at()));
  }

  private static ShiftFactTable facts(HandoverScope scope) {
    return scope.tables().shiftFacts(scope.shift().from(), scope.shift().to());
  }
}
