package dev.filmward.report;

import dev.filmward.pipeline.Plant;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.ReportTable.Settings;
import dev.filmward.store.StoredReport;
import dev.filmward.store.StoredReport.Signature;
import dev.filmward.store.Tables;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * The life of weekly reports: drafts that follow the data, and issued ones that never change.
 * Whoever issues a week again, after its data were corrected, makes a new revision that says what
 * changed. Thread-safe.
 */
public final class ReportDesk {
  private static final String NOTHING = "[]";

  private final Plant plant;
  private final WeekReader reader;

  public ReportDesk(Plant plant, WeekReader reader) {
    this.plant = plant;
    this.reader = reader;
  }

  /** What holds now, with who decided it; the usual where nobody did. */
  public Decided settings() {
    return plant.store().read(ReportDesk::decided);
  }

  /**
   * Settings and their version, 0 where nobody decided.
   *
   * @param settings that hold
   */
  public record Decided(
      ReportSettings settings, int version, String by, String reason, Optional<Instant> at) {}

  private static Decided decided(Tables tables) {
    return tables
        .reports()
        .settings()
        .map(
            kept ->
                new Decided(
                    ReportJson.settings(kept.json()),
                    kept.version(),
                    kept.by(),
                    kept.reason(),
                    Optional.of(kept.at())))
        .orElse(new Decided(ReportSettings.USUAL, 0, "", "", Optional.empty()));
  }

  /** Decides about prices, the index that is asked for and the schedule. */
  public Decided decide(ReportSettings settings, String by, String reason) {
    if (reason.isBlank()) {
      throw new IllegalArgumentException("why is it decided? Give a reason");
    }
    Instant now = plant.clock().instant();
    String json = ReportJson.text(settings);
    return plant
        .store()
        .write(
            tables -> {
              int version = decided(tables).version() + 1;
              tables.reports().add(new Settings(version, json, by, reason, now));
              tables
                  .audit()
                  .add(
                      new AuditEntry(
                          now, by, "report", "settings, version " + version, reason + ": " + json));
              return decided(tables);
            });
  }

  /** The week as it is known now; nothing is kept. */
  public WeeklyReport preview(ReportWeek week, Scope scope) {
    return reader.read(week, scope, settings().settings());
  }

  /** Keeps a draft, in place of an earlier one. */
  public StoredReport draft(ReportWeek week, Scope scope) {
    WeeklyReport report = preview(week, scope);
    byte[] json = ReportJson.write(report);
    return plant
        .store()
        .write(
            tables ->
                tables
                    .reports()
                    .add(stored(report, json, scope, 0, Optional.empty(), NOTHING), json));
  }

  /**
   * Freezes the week as it is known now, under a person's name.
   *
   * @param seen {@link ReportJson#seen} of the preview that the person looked at
   * @throws IllegalStateException if the week has not ended, something is known now that the person
   *     did not see, or nothing differs from the revision before
   */
  public StoredReport issue(ReportWeek week, Scope scope, String seen, Signature signature) {
    if (signature.at().isBefore(week.to())) {
      throw new IllegalStateException(
          week.word()
              + " ends at "
              + week.to()
              + "; issue the report after that, or look at the preview until then");
    }
    WeeklyReport report = preview(week, scope);
    if (!ReportJson.seen(report).equals(seen)) {
      throw new IllegalStateException(
          week.word() + " is known otherwise now than it was shown; look at it again, then sign");
    }
    byte[] json = ReportJson.write(report);
    return plant.store().write(tables -> issue(tables, report, json, scope, signature));
  }

  private static StoredReport issue(
      Tables tables, WeeklyReport report, byte[] json, Scope scope, Signature signature) {
    Optional<StoredReport> before =
        tables.reports().of(key(report, scope)).stream()
            .filter(each -> each.revision() > 0)
            .findFirst();
    List<ReportChange> changes =
        before.map(old -> ReportDiff.of(read(tables, old), report)).orElse(List.of());
    if (before.isPresent() && changes.isEmpty()) {
      throw new IllegalStateException(
          "nothing differs from revision " + before.get().revision() + "; it stands as it is");
    }
    int revision = before.map(StoredReport::revision).orElse(0) + 1;
    StoredReport issued =
        tables
            .reports()
            .add(
                stored(
                    report,
                    json,
                    scope,
                    revision,
                    Optional.of(signature),
                    ReportJson.text(changes)),
                json);
    tables
        .audit()
        .add(
            new AuditEntry(
                signature.at(),
                signature.by(),
                "report",
                "week " + report.week() + ", revision " + revision,
                "issued: " + signature.reason() + "; SHA-256 " + issued.digest()));
    return issued;
  }

  private static StoredReport.Scope key(WeeklyReport report, Scope scope) {
    return new StoredReport.Scope(report.week(), scope.line(), scope.structure());
  }

  private static StoredReport stored(
      WeeklyReport report,
      byte[] json,
      Scope scope,
      int revision,
      Optional<Signature> signature,
      String changes) {
    return new StoredReport(
        0,
        key(report, scope),
        revision,
        report.madeAt(),
        signature,
        ReportJson.digest(json),
        report.dataDigest(),
        changes);
  }

  /** Kept reports, newest week first. */
  public List<StoredReport> newest(int most) {
    return plant.store().read(tables -> tables.reports().newest(most));
  }

  /**
   * A kept report with its standing.
   *
   * @throws NoSuchElementException if there is none
   * @throws IllegalStateException if it is not what was frozen
   */
  public Issue find(long id) {
    return plant
        .store()
        .read(
            tables -> {
              StoredReport stored =
                  tables
                      .reports()
                      .find(id)
                      .orElseThrow(() -> new NoSuchElementException("no report " + id));
              return new Issue(read(tables, stored), standing(stored));
            });
  }

  private static Standing standing(StoredReport stored) {
    return new Standing(
        stored.revision(),
        stored.signature().map(Signature::by).orElse(""),
        stored.signature().map(Signature::at),
        stored.signature().map(Signature::reason).orElse(""),
        ReportJson.changes(stored.changes()),
        stored.digest());
  }

  private static WeeklyReport read(Tables tables, StoredReport stored) {
    byte[] json = tables.reports().content(stored.id());
    if (!ReportJson.digest(json).equals(stored.digest())) {
      throw new IllegalStateException(
          "report "
              + stored.id()
              + " is not what was frozen: its digest differs; restore a backup");
    }
    try {
      return ReportJson.read(json);
    } catch (IOException e) {
      throw new IllegalStateException("report " + stored.id() + " cannot be read", e);
    }
  }
}
