package dev.filmward.pipeline;

import dev.filmward.intake.FileRefused;
import dev.filmward.intake.KeptHead;
import dev.filmward.intake.LooseRows;
import dev.filmward.intake.LooseRows.Trial;
import dev.filmward.pipeline.MendReport.Still;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Sender;
import dev.filmward.store.HeldRow;
import dev.filmward.store.HeldRow.Mended;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Mends rows in quarantine. Each text is read by itself first, with the head of the file its row
 * came in; those that give exactly one row without a fault are read together as a file of their
 * own, by the way that all files take. Where a process ends between that and the mark, the row is
 * still open and submitting it again changes no reading. Thread-safe; one mending at a time.
 */
final class Mending {
  private static final int LINES_NAMED = 5;
  private static final String NO_HEAD =
      "what stands above the rows of this file was not kept; mend the file and bring it in again";

  private final Plant plant;
  private final Reading reading;

  /** Reads a file into the store. */
  @FunctionalInterface
  interface Reading {
    FileEntry read(IncomingFile file, Importer.Opening opening);
  }

  Mending(Plant plant, Reading reading) {
    this.plant = plant;
    this.reading = reading;
  }

  /** A file and its rows in quarantine, as they are chosen. */
  HeldFile held(long fileId, Choice choice) {
    Kept kept = plant.store().read(tables -> kept(tables, fileId, choice));
    if (kept.head().isEmpty()) {
      return new HeldFile(kept.entry(), "", Optional.empty(), NO_HEAD, kept.rows());
    }
    KeptHead head = kept.head().get();
    try {
      LooseRows reader = new LooseRows(head, kept.entry().name(), plant.structures(), plant.zone());
      return new HeldFile(
          kept.entry(),
          head.text(),
          Optional.of(reader),
          obstacle(kept.entry(), reader),
          kept.rows());
    } catch (FileRefused e) {
      return new HeldFile(
          kept.entry(), head.text(), Optional.empty(), String.valueOf(e.getMessage()), kept.rows());
    }
  }

  /** Chooses rows of a file. */
  @FunctionalInterface
  interface Choice {
    List<HeldRow> of(Tables tables);
  }

  synchronized MendReport mend(long fileId, List<MendedText> texts, String by) {
    HeldFile held = held(fileId, tables -> rows(tables, fileId, texts));
    if (!held.obstacle().isEmpty()) {
      throw new IllegalStateException(held.obstacle());
    }
    LooseRows reader = held.reader().orElseThrow();
    List<Still> still = new ArrayList<>();
    Map<Long, String> good = new LinkedHashMap<>();
    byLine(held.rows(), texts)
        .forEach(
            (line, text) -> {
              String fault = fault(reader.attempt(text.text()));
              if (fault.isEmpty()) {
                good.put(line, text.text());
              } else {
                still.add(new Still(text.rowId(), line, text.text(), fault));
              }
            });
    return good.isEmpty()
        ? new MendReport(Optional.empty(), 0, still)
        : new MendReport(Optional.of(submit(held, good, by)), good.size(), still);
  }

  private record Kept(FileEntry entry, Optional<KeptHead> head, List<HeldRow> rows) {}

  private static Kept kept(Tables tables, long fileId, Choice choice) {
    FileEntry entry =
        tables
            .files()
            .find(fileId)
            .orElseThrow(() -> new NoSuchElementException("no file " + fileId));
    Optional<KeptHead> head =
        tables.heldRows().head(fileId).map(found -> new KeptHead(found.text(), found.mapping()));
    return new Kept(entry, head, choice.of(tables));
  }

  private static String obstacle(FileEntry entry, LooseRows reader) {
    return entry.source().equals("demo")
        ? "the times of demo data are moved towards now, so that a row of it cannot be read alone"
        : reader.obstacle().orElse("");
  }

  private static List<HeldRow> rows(Tables tables, long fileId, List<MendedText> texts) {
    List<HeldRow> rows = new ArrayList<>();
    for (MendedText text : texts) {
      HeldRow row =
          tables
              .heldRows()
              .find(fileId, text.rowId())
              .orElseThrow(
                  () ->
                      new NoSuchElementException(
                          "no row " + text.rowId() + " in the quarantine of file " + fileId));
      row.mended().ifPresent(mended -> refuseAgain(row, mended));
      rows.add(row);
    }
    return rows;
  }

  private static void refuseAgain(HeldRow row, Mended mended) {
    throw new IllegalStateException(
        "line %d was mended already, by %s, and came as file %d; nothing was changed now"
            .formatted(row.row().line(), mended.by(), mended.fileId()));
  }

  /** A line of the wide layout may be held for several of its readings; it is mended once. */
  private static Map<Long, MendedText> byLine(List<HeldRow> rows, List<MendedText> texts) {
    Map<Long, MendedText> byLine = new LinkedHashMap<>();
    for (int i = 0; i < rows.size(); i++) {
      long line = rows.get(i).row().line();
      MendedText before = byLine.put(line, texts.get(i));
      if (before != null && !before.text().equals(texts.get(i).text())) {
        throw new IllegalArgumentException(
            "line " + line + " is submitted twice, with two different texts");
      }
    }
    return byLine;
  }

  /** What keeps a text from being one row that can be used; empty where nothing does. */
  private static String fault(Trial trial) {
    if (trial.rows() != 1) {
      return trial.rows() == 0
          ? "this gives no row of readings"
          : "this gives " + trial.rows() + " rows; each is mended by itself";
    }
    return trial.rejections().stream()
        .map(
            rejection ->
                rejection.column().isEmpty()
                    ? rejection.reason()
                    : rejection.column() + ": " + rejection.reason())
        .collect(Collectors.joining(". "));
  }

  private FileEntry submit(HeldFile held, Map<Long, String> good, String by) {
    LooseRows reader = held.reader().orElseThrow();
    FileEntry original = held.entry();
    String lines = lines(good);
    Sender sender =
        Sender.of(by, "mended " + lines + " of " + original.name() + ", file " + original.id());
    IncomingFile file =
        new IncomingFile(
                original.name() + ", " + lines,
                "mended",
                () -> reader.file(List.copyOf(good.values())))
            .from(sender);
    FileEntry entry = reading.read(file, reader::head);
    if (entry.refusal().isPresent()) {
      throw new IllegalStateException(entry.refusal().get());
    }
    plant.store().change(tables -> mark(tables, original, entry, good));
    return entry;
  }

  private void mark(Tables tables, FileEntry original, FileEntry entry, Map<Long, String> good) {
    String by = entry.sender().by();
    List<Mended> mended =
        good.values().stream()
            .map(text -> new Mended(text, by, plant.clock().instant(), entry.id()))
            .toList();
    tables.heldRows().mend(original.id(), mended, List.copyOf(good.keySet()));
    tables.audit().add(Audited.mended(original, entry, good));
  }

  private static String lines(Map<Long, String> good) {
    String named =
        good.keySet().stream()
            .limit(LINES_NAMED)
            .map(String::valueOf)
            .collect(Collectors.joining(", "));
    int more = good.size() - LINES_NAMED;
    return (good.size() == 1 ? "line " : "lines ")
        + named
        + (more > 0 ? " and " + more + " more" : "");
  }
}
