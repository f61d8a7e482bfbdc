package dev.filmward.pipeline;

import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.CheckPlan;
import dev.filmward.diagnosis.Revision;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Store;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The plant's causes and its plan of first checks, each kept in versions. Whoever changes one names
 * the version that was looked at, so that nobody writes over what another one just wrote.
 * Thread-safe.
 */
public final class CauseBook {
  private final Store store;
  private final Clock clock;

  CauseBook(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /**
   * Who changes something and why.
   *
   * @param version the one that was looked at; 0 for the built-in one
   */
  public record Change(int version, String by, String reason) {}

  /**
   * Puts a list of causes in the place of the one before.
   *
   * @throws IllegalStateException if somebody else did so in the meantime
   * @throws IllegalArgumentException if a cause is gone that was there
   */
  public Revision keep(Causes causes, Change change) {
    return store.write(
        tables -> {
          Revision revision = next(tables.causes().newest(), change, clock.instant());
          tables.causes().add(revision, causes.inPlaceOf(tables.causes().current()));
          tables.audit().add(audited("causes", revision, words(causes)));
          return revision;
        });
  }

  /**
   * Puts a plan of first checks in the place of the one before.
   *
   * @throws IllegalStateException if somebody else did so in the meantime
   * @throws IllegalArgumentException if it is about a cause that is not in the list
   */
  public Revision keep(CheckPlan plan, Change change) {
    return store.write(
        tables -> {
          Causes causes = tables.causes().current();
          for (String code : plan.byCause().keySet()) {
            if (causes.all().stream().noneMatch(cause -> cause.code().equals(code))) {
              throw new IllegalArgumentException("no cause \"" + code + "\" in the list");
            }
          }
          Revision revision = next(tables.checks().newest(), change, clock.instant());
          tables.checks().add(revision, plan);
          tables.audit().add(audited("checks", revision, words(plan)));
          return revision;
        });
  }

  /**
   * The version after the newest.
   *
   * @throws IllegalStateException if that is not the one that was looked at
   */
  static Revision next(Optional<Revision> newest, Change change, Instant now) {
    int version = newest.map(Revision::version).orElse(0);
    if (version != change.version()) {
      String who =
          newest.map(held -> held.author() + " has changed it").orElse("it was never changed");
      throw new IllegalStateException(
          "you looked at version " + change.version() + ", but " + who + ": it is " + version);
    }
    return new Revision(version + 1, change.by(), change.reason(), now);
  }

  private static AuditEntry audited(String what, Revision revision, String detail) {
    return new AuditEntry(
        revision.at(),
        revision.author(),
        what,
        "version " + revision.version(),
        revision.reason() + "\n" + detail);
  }

  private static String words(Causes causes) {
    return causes.all().stream()
        .map(cause -> cause.code() + ": " + cause.words() + ", " + cause.standing().word())
        .collect(Collectors.joining("\n"));
  }

  private static String words(CheckPlan plan) {
    String patterns =
        plan.byPattern().entrySet().stream()
            .map(entry -> entry.getKey().words() + ": " + String.join("; ", entry.getValue()))
            .collect(Collectors.joining("\n"));
    String causes =
        plan.byCause().entrySet().stream()
            .map(entry -> "\n" + entry.getKey() + ": " + String.join("; ", entry.getValue()))
            .collect(Collectors.joining());
    return patterns + causes;
  }
}
