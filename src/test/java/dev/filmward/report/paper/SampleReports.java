package dev.filmward.report.paper;

import dev.filmward.film.Characteristic.Kind;
import dev.filmward.report.Asked;
import dev.filmward.report.Bounds;
import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.Bins;
import dev.filmward.report.CharacteristicWeek.ChartPoint;
import dev.filmward.report.CharacteristicWeek.GiveawayWeek;
import dev.filmward.report.CharacteristicWeek.LaneWeek;
import dev.filmward.report.CharacteristicWeek.Money;
import dev.filmward.report.CharacteristicWeek.Shape;
import dev.filmward.report.CharacteristicWeek.Steadiness;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.FilmWeek.Act;
import dev.filmward.report.FilmWeek.AlarmWeek;
import dev.filmward.report.FilmWeek.CalibrationWeek;
import dev.filmward.report.FilmWeek.Cause;
import dev.filmward.report.FilmWeek.GaugeWeek;
import dev.filmward.report.FilmWeek.LastStudy;
import dev.filmward.report.FilmWeek.LeftOut;
import dev.filmward.report.FilmWeek.LimitsMove;
import dev.filmward.report.FilmWeek.Ply;
import dev.filmward.report.FilmWeek.SamplesWeek;
import dev.filmward.report.FilmWeek.ScalingWeek;
import dev.filmward.report.FilmWeek.StudyLayer;
import dev.filmward.report.IndexWeek;
import dev.filmward.report.ReportChange;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.Verdict;
import dev.filmward.report.WeeklyReport;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Invented weeks for the tests of the paper forms; the same seed gives the same week. */
final class SampleReports {
  static final Instant MONDAY = Instant.parse("2026-11-15T23:00:00Z");
  static final String PERSON = "Ines Falk";

  private static final int SAMPLES = 336;
  private static final double STEP_SECONDS = 1800;

  private SampleReports() {}

  static WeeklyReport of(FilmWeek... films) {
    return new WeeklyReport(
        WeeklyReport.FORMAT,
        "2026-W47",
        "Europe/Berlin",
        MONDAY,
        MONDAY.plusSeconds(7 * 86_400),
        MONDAY.plusSeconds(7 * 86_400 + 21_600),
        "0.1.0",
        WeeklyReport.Edition.INTERNAL,
        Asked.USUAL,
        List.of(films),
        new WeeklyReport.Intake(42, 1, 10_080, 12, 3),
        "9f2c".repeat(16));
  }

  /** Two films: one capable, one that is not stable. */
  static WeeklyReport usual() {
    return of(
        film("Line 1", "LID-60", Verdict.CAPABLE), film("Line 2", "POUCH-90", Verdict.NOT_STABLE));
  }

  static Issue draft(WeeklyReport report) {
    return new Issue(report, Standing.DRAFT);
  }

  static Issue issued(WeeklyReport report) {
    return new Issue(
        report,
        new Standing(
            2,
            PERSON,
            Optional.of(MONDAY.plusSeconds(8 * 86_400)),
            "Late readings of line 2",
            List.of(
                new ReportChange(
                    "Line 2", "POUCH-90", "layer 1 Outer skin", "mean", "14.123456", "14.2"),
                new ReportChange("Line 2", "POUCH-90", "", "verdict", "CAPABLE", "NOT_STABLE")),
            "ab12".repeat(16)));
  }

  static FilmWeek film(String line, String structure, Verdict verdict) {
    boolean isStable = verdict != Verdict.NOT_STABLE;
    List<CharacteristicWeek> characteristics = new ArrayList<>();
    characteristics.add(characteristic(1, "Outer skin", 14, isStable));
    characteristics.add(characteristic(2, "Tie", 3, true));
    characteristics.add(characteristic(3, "Barrier", 5, isStable));
    characteristics.add(characteristic(4, "Seal", 38, isStable));
    characteristics.add(characteristic(0, "", 60, isStable));
    characteristics.add(share("Barrier"));
    return film(line, structure, verdict, characteristics);
  }

  static FilmWeek film(
      String line, String structure, Verdict verdict, List<CharacteristicWeek> characteristics) {
    List<Ply> plies =
        characteristics.stream()
            .filter(each -> each.kind() == Kind.LAYER)
            .map(
                each ->
                    new Ply(
                        each.position(),
                        each.name(),
                        List.of(List.of("skin", "tie", "barrier", "seal").get(each.position() - 1)),
                        each.individual().target(),
                        each.mean()))
            .toList();
    return new FilmWeek(
        line,
        structure,
        "Barrier lidding film",
        plies,
        verdict,
        Verdict.CAPABLE,
        characteristics,
        new AlarmWeek(
            5,
            1,
            2,
            4,
            OptionalDouble.of(420),
            OptionalDouble.of(9000),
            List.of(
                new Cause("screen-pack", "Screen pack blocked", 2),
                new Cause("feed", "Feed bridged", 1))),
        gauge(),
        List.of(
            new LimitsMove(
                MONDAY.plusSeconds(90_000), PERSON, 3, "frozen", "After the new screen pack")),
        new SamplesWeek(SAMPLES + 2, SAMPLES, 340, 7, 0),
        List.of(
            new LeftOut(
                MONDAY.plusSeconds(200_000),
                "R-1042",
                "S-17",
                List.of("boundary-not-found"),
                "confirmed",
                PERSON,
                "The barrier was not seen")),
        List.of(new Act(Act.Kind.NOT_STABLE, "Barrier", 23)));
  }

  private static GaugeWeek gauge() {
    return new GaugeWeek(
        List.of(
            new CalibrationWeek(
                MONDAY.plusSeconds(30_000), PERSON, "Gauge 1", "Outer skin", 1950, 1958, 6.5)),
        4,
        2,
        Map.of("boundary-not-found", 3L, "lost-echo", 1L),
        Optional.of(
            new LastStudy(
                7,
                "Gauge 1",
                MONDAY.minusSeconds(900_000),
                PERSON,
                "Fit for skins, marginal for the tie",
                List.of(
                    new StudyLayer(
                        "Outer skin", 0.061, OptionalDouble.of(13.1), OptionalDouble.of(0.9987)),
                    new StudyLayer(
                        "Tie", 0.055, OptionalDouble.of(41.3), OptionalDouble.empty())))),
        List.of(
            new ScalingWeek(
                MONDAY.plusSeconds(200_000),
                1,
                "Outer skin",
                3,
                1.00410,
                0,
                1958,
                OptionalDouble.of(-0.4),
                OptionalDouble.of(23),
                PERSON,
                "reference piece")),
        List.of(2));
  }

  /** Normal readings about the target; unsteady ones shift by two sigma on Friday. */
  static CharacteristicWeek characteristic(
      int position, String name, double targetUm, boolean isStable) {
    Random random = new Random(1000L * position + 7);
    double sigma = targetUm * 0.02;
    List<ChartPoint> chart = new ArrayList<>();
    long[] counts = new long[20];
    double start = targetUm - 5 * sigma;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < SAMPLES; i++) {
      boolean isShifted = !isStable && i > 200;
      double mean = targetUm + sigma * (0.45 * random.nextGaussian() + (isShifted ? 1.1 : 0));
      chart.add(point(i, targetUm, sigma, mean));
      for (int lane = 0; lane < 5; lane++) {
        double reading = mean + sigma * 0.8 * random.nextGaussian();
        sum += reading;
        squares += reading * reading;
        int bin = (int) Math.max(0, Math.min(19, 2 * (reading - start) / sigma));
        counts[bin]++;
      }
    }
    long n = 5L * SAMPLES;
    double mean = sum / n;
    double overall = Math.sqrt((squares - n * mean * mean) / (n - 1));
    return characteristic(
        position,
        name,
        targetUm,
        new Figures(isStable, mean, overall),
        chart,
        new Bins(start, sigma / 2, list(counts)));
  }

  private record Figures(boolean isStable, double mean, double overall) {}

  private static CharacteristicWeek characteristic(
      int position, String name, double target, Figures found, List<ChartPoint> chart, Bins bins) {
    double lower = target * 0.9;
    double upper = target * 1.1;
    double ppk = Math.min(upper - found.mean, found.mean - lower) / (3 * found.overall);
    OptionalDouble none = OptionalDouble.empty();
    IndexWeek index =
        new IndexWeek(
            found.isStable ? IndexWeek.Kind.CAPABILITY : IndexWeek.Kind.PERFORMANCE,
            found.isStable ? IndexWeek.Why.STABLE : IndexWeek.Why.UNSTABLE,
            IndexWeek.Method.NORMAL,
            found.isStable ? OptionalDouble.of(ppk * 1.14) : none,
            found.isStable ? OptionalDouble.of(ppk * 1.12) : none,
            OptionalDouble.of(ppk * 1.03),
            OptionalDouble.of(ppk),
            OptionalDouble.of(ppk - 0.09),
            OptionalDouble.of(ppk - 0.11),
            OptionalDouble.of(ppk + 0.11),
            ppk < 1.33
                ? IndexWeek.Standing.BELOW
                : found.isStable ? IndexWeek.Standing.SHOWN : IndexWeek.Standing.NOT_SHOWN);
    List<LaneWeek> lanes = new ArrayList<>();
    for (int lane = 1; lane <= 5; lane++) {
      double off = (lane - 3) * 0.15 * found.overall;
      lanes.add(
          new LaneWeek(
              lane,
              SAMPLES,
              found.mean + off,
              OptionalDouble.of(found.overall * 0.96),
              OptionalDouble.of(ppk - Math.abs(off) / (3 * found.overall))));
    }
    List<TrendWeek> trend = new ArrayList<>();
    for (int week = 35; week <= 47; week++) {
      boolean isMade = week != 41;
      double then = week == 47 ? ppk : ppk + 0.1 * Math.sin(week);
      trend.add(
          new TrendWeek(
              "2026-W" + week,
              isMade ? SAMPLES : 0,
              isMade ? OptionalDouble.of(found.mean) : none,
              isMade ? OptionalDouble.of(found.overall) : none,
              isMade ? OptionalDouble.of(then) : none,
              isMade ? OptionalDouble.of(then - 0.09) : none,
              isMade && (week < 47 || found.isStable),
              Optional.of(bounds(lower, target, upper))));
    }
    return new CharacteristicWeek(
        position == 0 ? Kind.TOTAL : Kind.LAYER,
        position,
        name,
        bounds(lower, target, upper),
        bounds(target * 0.95, target, target * 1.05),
        SAMPLES,
        5L * SAMPLES,
        411.6,
        OptionalDouble.of(found.mean),
        OptionalDouble.of(found.overall * 0.88),
        OptionalDouble.of(found.overall),
        0.31,
        new Steadiness(SAMPLES, found.isStable ? 2 : 23, found.isStable),
        index,
        OptionalDouble.of(ppk * 1.2),
        Optional.of(lanes.get(0)),
        new Shape("normal", OptionalDouble.of(0.21), none, none),
        OptionalDouble.of(0),
        OptionalDouble.of(3.4),
        Optional.of(bins),
        chart,
        lanes,
        0.12,
        Optional.of(
            new GiveawayWeek(
                OptionalDouble.of(0.31),
                OptionalDouble.of(0.22),
                OptionalDouble.of(0.2),
                OptionalDouble.of(1.9),
                Optional.of(new Money(412.5, "EUR", "2026-11-01")))),
        trend,
        Optional.empty(),
        List.of());
  }

  /** Without a specification, a chart or an index. */
  static CharacteristicWeek share(String name) {
    OptionalDouble none = OptionalDouble.empty();
    return new CharacteristicWeek(
        Kind.SHARE,
        3,
        name,
        bounds(Double.NaN, Double.NaN, Double.NaN),
        bounds(Double.NaN, Double.NaN, Double.NaN),
        SAMPLES,
        5L * SAMPLES,
        400,
        OptionalDouble.of(0.083456),
        none,
        OptionalDouble.of(0.00213),
        0.2,
        new Steadiness(0, 0, false),
        new IndexWeek(
            IndexWeek.Kind.NONE,
            IndexWeek.Why.NO_SPECIFICATION,
            IndexWeek.Method.NORMAL,
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            IndexWeek.Standing.NOT_JUDGED),
        none,
        Optional.empty(),
        new Shape("not_judged", none, none, none),
        none,
        none,
        Optional.empty(),
        List.of(),
        List.of(),
        0,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of());
  }

  private static ChartPoint point(int i, double target, double sigma, double mean) {
    double upper = target + 1.35 * sigma;
    boolean isOut = Math.abs(mean - target) > 1.35 * sigma;
    boolean isMissing = i > 90 && i < 104;
    return new ChartPoint(
        MONDAY.plusSeconds((long) (i * STEP_SECONDS)),
        "R-" + (1000 + i / 12),
        "S-" + i,
        isMissing ? OptionalDouble.empty() : OptionalDouble.of(mean),
        OptionalDouble.of(1.9 * sigma),
        OptionalDouble.of(target - (i < 150 ? 1.35 : 1.3) * sigma),
        OptionalDouble.of(target),
        OptionalDouble.of(upper),
        isOut && !isMissing ? List.of("xbar:beyond-limit:high") : List.of());
  }

  private static Bounds bounds(double lower, double target, double upper) {
    return new Bounds(optional(lower), optional(target), optional(upper));
  }

  private static OptionalDouble optional(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static List<Long> list(long[] counts) {
    List<Long> list = new ArrayList<>();
    for (long count : counts) {
      list.add(count);
    }
    return list;
  }
}
