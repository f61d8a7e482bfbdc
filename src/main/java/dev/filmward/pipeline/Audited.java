package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.HoldScope;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.SampleKey;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.intake.Mapping;
import dev.filmward.intake.Words;
import dev.filmward.rule.TestsVersion;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.FileEntry;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.ScreeningVersion;
import dev.filmward.store.StructureTable.Given;
import dev.filmward.store.StructureTable.StoredFile;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What people do to the plant, as entries of the audit chain. */
final class Audited {
  /** Where nobody is asked for a name. */
  static final String NOT_NAMED = "not named";

  private Audited() {}

  static AuditEntry alarm(Alarm alarm, HistoryEntry entry) {
    String subject =
        "alarm " + alarm.id() + ", " + alarm.subject().line() + ", " + alarm.subject().structure();
    return new AuditEntry(entry.at(), entry.by(), "alarm", subject, entry.what());
  }

  static AuditEntry limits(Production production, FrozenLimits frozen, StateChange change) {
    VersionKey key =
        new VersionKey(production.line(), production.structure().code(), frozen.version());
    return moved(key, change);
  }

  static AuditEntry moved(VersionKey key, StateChange change) {
    return new AuditEntry(
        change.decision().at(),
        change.decision().author(),
        "limits",
        key.line() + ", " + key.structure() + ", version " + key.version(),
        change.state().word() + ": " + change.decision().reason());
  }

  static AuditEntry rescaled(Production production, int position, Scaling scaling) {
    String steps =
        scaling.steps().stream()
            .map(
                step ->
                    String.format(
                            Locale.ROOT,
                            "from %s by %.9g and %.6g um (%.1f m/s)",
                            step.holdsFrom(),
                            step.scale().factor(),
                            step.scale().offsetUm(),
                            step.velocityMps())
                        + step.temperature().map(Audited::byTemperature).orElse(""))
            .collect(Collectors.joining("; "));
    String what = scaling.isBack() ? "takes version " + scaling.takesBack() + " back" : steps;
    return new AuditEntry(
        scaling.word().at(),
        scaling.word().by(),
        "rescale",
        production.line()
            + ", "
            + production.structure().code()
            + ", layer "
            + position
            + ", version "
            + scaling.version(),
        what + ": " + scaling.word().reason());
  }

  private static String byTemperature(TemperatureModel model) {
    return String.format(
        Locale.ROOT,
        ", by temperature %.6g %% a kelvin from %.6g C on",
        model.percentPerKelvin(),
        model.atC());
  }

  static AuditEntry tests(Production production, TestsVersion version) {
    return new AuditEntry(
        version.decision().at(),
        version.decision().author(),
        "tests",
        production.line() + ", " + production.structure().code() + ", version " + version.version(),
        version.decision().reason());
  }

  static AuditEntry screened(SampleKey key, ScreeningState state, Decision decision) {
    return new AuditEntry(
        decision.at(),
        decision.author(),
        "screening",
        key.line() + ", " + key.structure() + ", roll " + key.roll() + ", sample " + key.sample(),
        state.word() + ": " + decision.reason());
  }

  static AuditEntry screening(Production production, ScreeningVersion version) {
    return new AuditEntry(
        version.decision().at(),
        version.decision().author(),
        "screening",
        production.line() + ", " + production.structure().code() + ", version " + version.version(),
        version.decision().reason());
  }

  static AuditEntry held(Hold hold) {
    String end = hold.until().map(until -> " until " + until).orElse("");
    return new AuditEntry(
        hold.decision().at(),
        hold.decision().author(),
        "hold",
        hold.kind().word() + " " + hold.id() + ", " + words(hold.scope()),
        "begins" + end + ": " + hold.decision().reason());
  }

  static AuditEntry released(Hold hold, Decision decision) {
    return new AuditEntry(
        decision.at(),
        decision.author(),
        "hold",
        hold.kind().word() + " " + hold.id() + ", " + words(hold.scope()),
        "ends: " + decision.reason());
  }

  private static String words(HoldScope scope) {
    return scope.line()
        + scope.structure().map(code -> ", " + code).orElse("")
        + scope.deviation().map(way -> ", " + way.word()).orElse("")
        + (scope.positions().isEmpty() ? "" : ", positions " + new TreeSet<>(scope.positions()));
  }

  static AuditEntry mode(LineModeChange change, LineMode before) {
    return new AuditEntry(
        change.decision().at(),
        change.decision().author(),
        "line",
        change.line(),
        "from "
            + before.word()
            + " to "
            + change.mode().word()
            + " since "
            + change.since()
            + ": "
            + change.decision().reason());
  }

  /** What a file replaced. */
  static AuditEntry corrections(FileEntry entry) {
    String why = entry.sender().why();
    return new AuditEntry(
        entry.receivedAt(),
        entry.sender().by(),
        "correct",
        "file " + entry.id() + ", " + entry.name(),
        Words.count(entry.counts().arrivals().corrected(), "reading")
            + (why.isEmpty() ? "" : ": " + why));
  }

  /** Rows in quarantine that were submitted again, as file {@code entry}. */
  static AuditEntry mended(FileEntry original, FileEntry entry, Map<Long, String> texts) {
    return new AuditEntry(
        entry.receivedAt(),
        entry.sender().by(),
        "mend",
        "file " + original.id() + ", " + original.name(),
        texts.entrySet().stream()
            .map(text -> "line " + text.getKey() + ": " + text.getValue())
            .collect(Collectors.joining("\n", "as file " + entry.id() + "\n", "")));
  }

  static AuditEntry structures(StoredFile file, Given given) {
    String from = given.holdsFrom().map(moment -> "holds from " + moment + ", ").orElse("");
    String why = given.reason().isEmpty() ? "" : given.reason() + "\n";
    return new AuditEntry(
        given.receivedAt(), given.by(), "structures", file.name(), from + why + file.yaml());
  }

  /** A mapping that is kept from now on. */
  static AuditEntry mapping(Mapping mapping, byte[] yaml, String by, Instant at) {
    String text = new String(yaml, StandardCharsets.UTF_8);
    return new AuditEntry(at, by, "mapping", mapping.name(), text);
  }
}
