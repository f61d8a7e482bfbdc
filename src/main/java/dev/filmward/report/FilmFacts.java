package dev.filmward.report;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.CareFigures;
import dev.filmward.alarm.CareRecord;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.diagnosis.Cause;
import dev.filmward.diagnosis.Causes;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.report.FilmWeek.AlarmWeek;
import dev.filmward.report.FilmWeek.CalibrationWeek;
import dev.filmward.report.FilmWeek.GaugeWeek;
import dev.filmward.report.FilmWeek.LeftOut;
import dev.filmward.report.FilmWeek.LimitsMove;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.ScreeningTable.Decided;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;

/**
 * Reads what happened around a film in a week: alarms, the gauge, limits, samples. Within one
 * transaction, for one thread.
 */
final class FilmFacts {
  private static final String RULE = "rule";

  private final Tables tables;
  private final String line;
  private final Structure structure;
  private final ReportWeek week;

  FilmFacts(Tables tables, String line, Structure structure, ReportWeek week) {
    this.tables = tables;
    this.line = line;
    this.structure = structure;
    this.week = week;
  }

  AlarmWeek alarms() {
    List<Alarm> opened =
        tables.alarms().openedSince(week.from()).stream()
            .filter(alarm -> alarm.subject().line().equals(line))
            .filter(alarm -> alarm.subject().structure().equals(structure.code()))
            .filter(alarm -> week.contains(alarm.excursion().course().openedAt()))
            .toList();
    CareFigures figures =
        CareFigures.of(
            opened.stream()
                .map(alarm -> CareRecord.of(alarm, tables.care().findings(alarm.id())))
                .toList(),
            week.from());
    Causes causes = tables.causes().current();
    return new AlarmWeek(
        opened.size(),
        (int) opened.stream().filter(alarm -> !alarm.isClosed()).count(),
        figures.unexplained(),
        figures.toAcknowledge().count(),
        seconds(figures.toAcknowledge().median()),
        seconds(figures.toAcknowledge().longest()),
        figures.pareto().stream()
            .map(
                found ->
                    new FilmWeek.Cause(found.code(), words(causes, found.code()), found.alarms()))
            .toList());
  }

  private static OptionalDouble seconds(Optional<Duration> time) {
    return time.isPresent()
        ? OptionalDouble.of(time.get().toMillis() / 1000.0)
        : OptionalDouble.empty();
  }

  private static String words(Causes causes, String code) {
    return causes.all().stream()
        .filter(cause -> cause.code().equals(code))
        .map(Cause::words)
        .findFirst()
        .orElse(code);
  }

  GaugeWeek gauge(List<CharacteristicTally> tallies) {
    List<ScreenedSample> flagged =
        tables.screening().flagged(line, structure.code(), FilmReader.span(week));
    Map<String, Long> kinds = new TreeMap<>();
    for (ScreenedSample sample : flagged) {
      Set<String> own = new HashSet<>();
      sample.flags().forEach(flag -> own.add(flag.kind().word()));
      own.forEach(kind -> kinds.merge(kind, 1L, Long::sum));
    }
    return new GaugeWeek(
        calibrations(),
        flagged.stream().filter(FilmFacts::looksMisread).count(),
        flagged.stream().filter(ScreenedSample::isOutOfCharts).count(),
        kinds,
        new LastStudies(tables, structure, week.to()).find(tallies),
        new ShownOtherwise(tables, line, structure, week).scalings(),
        new ShownOtherwise(tables, line, structure, week).limits());
  }

  /** A reading or a lane that is only missing is told with the data, not as misread. */
  private static boolean looksMisread(ScreenedSample sample) {
    return sample.flags().stream()
        .anyMatch(flag -> flag.kind() != Misread.LOST_ECHO && flag.kind() != Misread.LANE_MISSING);
  }

  /** Of the film's own layers. */
  private List<CalibrationWeek> calibrations() {
    return tables.calibrations().between(week.from(), week.to()).stream()
        .filter(each -> each.subject().structure().equals(structure.code()))
        .map(FilmFacts::calibration)
        .toList();
  }

  private static CalibrationWeek calibration(Calibration each) {
    return new CalibrationWeek(
        each.word().at(),
        each.word().by(),
        each.subject().gauge(),
        each.subject().layer(),
        each.before().mps(),
        each.found().velocity().mps(),
        each.found().uMps());
  }

  /** Decisions about limits; those of all characteristics together are one. */
  List<LimitsMove> limits() {
    Set<LimitsMove> moves = new HashSet<>();
    for (int position = 0; position <= structure.reported().size(); position++) {
      for (LimitsVersion version :
          tables.limits().of(new Series(line, structure.code(), position))) {
        for (StateChange change : version.changes()) {
          if (week.contains(change.decision().at())) {
            moves.add(
                new LimitsMove(
                    change.decision().at(),
                    change.decision().author(),
                    version.version(),
                    change.state().word(),
                    change.decision().reason()));
          }
        }
      }
    }
    return moves.stream()
        .sorted(Comparator.comparing(LimitsMove::at).thenComparing(LimitsMove::version))
        .toList();
  }

  List<LeftOut> leftOut() {
    return tables.screening().flagged(line, structure.code(), FilmReader.span(week)).stream()
        .filter(ScreenedSample::isOutOfCharts)
        .map(this::leftOut)
        .toList();
  }

  /** A person's word where there is one, else the rule's evidence. */
  private LeftOut leftOut(ScreenedSample each) {
    List<Decided> decisions = tables.screening().decisions(each.stored().id());
    Optional<Decided> last =
        decisions.stream().max(Comparator.comparing(decided -> decided.decision().at()));
    return new LeftOut(
        each.stored().sample().takenAt(),
        each.stored().sample().key().roll(),
        each.stored().sample().key().sample(),
        each.flags().stream().map(flag -> flag.kind().word()).distinct().toList(),
        each.state().orElseThrow().word(),
        last.map(decided -> decided.decision().author()).orElse(RULE),
        last.map(decided -> decided.decision().reason())
            .orElse(each.flags().stream().map(Flag::evidence).findFirst().orElse("")));
  }

  /**
   * Samples that should have come; 0 where the usual time between two is not known.
   *
   * @param times of the film's samples in the week, in time order
   * @param before of those of the week before, which tell the usual time where too few came
   * @param now what comes later cannot be missed yet
   */
  long expected(List<Instant> times, List<Instant> before, Instant now) {
    Optional<Duration> usual = ExpectedSamples.usual(times).or(() -> ExpectedSamples.usual(before));
    if (usual.isEmpty()) {
      return 0;
    }
    List<Instant> others =
        tables.samples().timesOfOthers(line, structure.code(), FilmReader.span(week));
    ExpectedSamples expected =
        new ExpectedSamples(tables.lineModes().of(line), others, wasOnTheLine(others));
    Instant to = now.isBefore(week.to()) ? now : week.to();
    return expected.count(times, week.from(), to, usual.orElseThrow());
  }

  /** Whether the line's last sample before the week was of this film. */
  private boolean wasOnTheLine(List<Instant> others) {
    List<Instant> own = tables.samples().timesBefore(line, structure.code(), week.from(), 1);
    return !own.isEmpty()
        && others.stream()
            .filter(at -> at.isBefore(week.from()))
            .allMatch(at -> at.isBefore(own.get(0)));
  }

  static boolean isLayer(Characteristic characteristic) {
    return characteristic.kind() == Characteristic.Kind.LAYER;
  }
}
