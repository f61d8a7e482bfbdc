package dev.filmward.report.paper.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The drawings say what the numbers say: places worked out by hand, gaps, steps, rings, land. */
class ChartsTest {
  private static final Numbers PLAIN =
      (value, decimals) -> String.format(Locale.ROOT, "%." + decimals + "f", value);
  private static final double DAY = 86_400;

  private static ControlPoint point(double at, double mean, String... signal) {
    return new ControlPoint(
        at,
        mean,
        9,
        10,
        11,
        ControlPoint.Membership.JUDGED,
        signal.length == 0 ? Optional.empty() : Optional.of(signal[0]));
  }

  private static Drawing chart(SpecLand land, ControlPoint... points) {
    return ControlChart.draw(
        new ControlFigure(
            0,
            7 * DAY,
            2 * DAY,
            List.of(new Mark(0, "Mon 16"), new Mark(DAY, "Tue 17")),
            List.of(),
            List.of(points),
            List.of(new LandSince(0, land)),
            "lower 9",
            "centre 10",
            "upper 11",
            PLAIN),
        500,
        100);
  }

  private static List<String> words(Drawing drawing) {
    return drawing.labels().stream().map(Label::text).toList();
  }

  private static long count(String pattern, Drawing drawing) {
    return Pattern.compile(pattern).matcher(drawing.shapes()).results().count();
  }

  /** The one path of the means has the width that no other line has. */
  private static String means(Drawing drawing) {
    return Pattern.compile(
            "<path d=\"([^\"]*)\" fill=\"none\" stroke=\"#1c2126\" stroke-width=\"0.60\"")
        .matcher(drawing.shapes())
        .results()
        .map(found -> found.group(1))
        .findFirst()
        .orElse("");
  }

  @Test
  void aMissingMeanAndALongPauseAreGapsInTheLine() {
    Drawing drawing =
        chart(
            SpecLand.NONE,
            point(0, 10),
            point(DAY, 10.5),
            point(1.5 * DAY, Double.NaN),
            point(2 * DAY, 9.5),
            point(3 * DAY, 9.6),
            point(6 * DAY, 10));
    assertThat(means(drawing).chars().filter(c -> c == 'M')).hasSize(3);
    assertThat(means(drawing).chars().filter(c -> c == 'L')).hasSize(2);
  }

  /**
   * Axis: 9 to 11 with 12 % air on each half, so 8.88 to 11.12 over 10 to 87 points from the top.
   */
  @Test
  void aMeanStandsWhereItsNumberSays() {
    Drawing drawing = chart(SpecLand.NONE, point(0, 10), point(3.5 * DAY, 10.56));
    assertThat(means(drawing)).startsWith("M34.00 48.50");
    double y = 48.5 - 0.56 / 2.24 * 77;
    double x = 34 + (500 - 34 - 74) / 2.0;
    assertThat(means(drawing)).endsWith(String.format(Locale.ROOT, "M%.2f %.2f", x, y));
  }

  @Test
  void eachSignalIsRingedAndItsTestNamedOnceInARow() {
    Drawing drawing =
        chart(
            SpecLand.NONE,
            point(0, 10),
            point(DAY, 11.5, "beyond limit"),
            point(2 * DAY, 11.6, "beyond limit"),
            point(5 * DAY, 8.5, "2 of 3"));
    assertThat(count("<circle [^>]*fill=\"none\"", drawing)).isEqualTo(3);
    assertThat(words(drawing)).containsOnlyOnce("beyond limit", "2 of 3");
    assertThat(words(drawing)).contains("lower 9", "centre 10", "upper 11", "Mon 16", "Tue 17");
  }

  @Test
  void limitsStepWhereOthersBeganToHold() {
    ControlPoint later =
        new ControlPoint(3 * DAY, 10, 8, 10, 12, ControlPoint.Membership.JUDGED, Optional.empty());
    long before = count("stroke-width=\"0.90\"", chart(SpecLand.NONE, point(0, 10)));
    assertThat(before).isEqualTo(2);
    assertThat(count("stroke-width=\"0.90\"", chart(SpecLand.NONE, point(0, 10), later)))
        .isEqualTo(4);
  }

  /** Land is hatched, limits are lines: nothing that is drawn for one is drawn for the other. */
  @Test
  void specificationIsHatchedLandAndControlLimitsAreLines() {
    SpecLand land = new SpecLand(9.2, 10.8, "below", "above");
    Drawing with = chart(land, point(0, 10), point(DAY, 10.1));
    Drawing without = chart(SpecLand.NONE, point(0, 10), point(DAY, 10.1));
    assertThat(count("url\\(#hatch-land\\)", with)).isEqualTo(2);
    assertThat(count("url\\(#hatch-land\\)", without)).isZero();
    assertThat(count("<(path|line)", with)).isEqualTo(count("<(path|line)", without) + 1);
    assertThat(with.shapes()).contains("<pattern id=\"hatch-land\"");
  }

  @Test
  void whatWasHeldOutIsHatchedAndNotJoined() {
    ControlPoint heldOut =
        new ControlPoint(DAY, 11.9, 9, 10, 11, ControlPoint.Membership.HELD_OUT, Optional.empty());
    Drawing drawing = chart(SpecLand.NONE, point(0, 10), heldOut, point(2 * DAY, 10));
    assertThat(count("url\\(#hatch-held_out\\)", drawing)).isEqualTo(1);
    assertThat(means(drawing).chars().filter(c -> c == 'L')).hasSize(1);
  }

  @Test
  void aWeekOfManySamplesKeepsItsExtremesAndItsRings() {
    List<ControlPoint> points = new ArrayList<>();
    for (int i = 0; i < 20_000; i++) {
      points.add(point(i * 7 * DAY / 20_000, i == 7777 ? 25 : 10 + (i % 7) * 0.1));
    }
    points.set(500, point(500 * 7 * DAY / 20_000, 10.3, "8 in a row"));
    Drawing drawing = chart(SpecLand.NONE, points.toArray(ControlPoint[]::new));
    double highest =
        Pattern.compile("[ML][\\d.]+ ([\\d.]+)")
            .matcher(means(drawing))
            .results()
            .map(MatchResult::group)
            .mapToDouble(pair -> Double.parseDouble(pair.split(" ")[1]))
            .min()
            .orElseThrow();
    assertThat(highest).isLessThan(16);
    assertThat(means(drawing).length()).isLessThan(40_000);
    assertThat(count("<circle", drawing)).isEqualTo(1);
  }

  @Test
  void anEmptyWeekIsDrawnWithoutPoints() {
    Drawing drawing = chart(SpecLand.NONE);
    assertThat(means(drawing)).isEmpty();
    assertThat(drawing.shapes()).doesNotContain("NaN", "Infinity");
  }

  @Test
  void barsAreAsTallAsTheirCounts() {
    Drawing drawing =
        DistributionChart.draw(
            new DistributionFigure(
                new double[] {9, 10, 11},
                new double[] {50, 100},
                new double[0],
                new double[0],
                new SpecLand(8, 12, "", ""),
                10,
                "target 10",
                PLAIN),
            240,
            125);
    double[] heights =
        Pattern.compile("height=\"([\\d.]+)\" fill=\"#c3c0b7\"")
            .matcher(drawing.shapes())
            .results()
            .mapToDouble(found -> Double.parseDouble(found.group(1)))
            .toArray();
    assertThat(heights).hasSize(2);
    assertThat(heights[1] / heights[0]).isCloseTo(2, within(0.001));
    assertThat(count("url\\(#hatch-land\\)", drawing)).isEqualTo(2);
    assertThat(words(drawing)).contains("target 10");
  }

  @Test
  void capabilityIsAFilledDotPerformanceAnOpenOneAndAWeekWithoutIsAGap() {
    Drawing drawing =
        IndexChart.draw(
            new IndexFigure(
                List.of(
                    new IndexPoint("W45", 1.5, 1.3, 1.7, IndexPoint.Claim.CAPABILITY),
                    new IndexPoint(
                        "W46", Double.NaN, Double.NaN, Double.NaN, IndexPoint.Claim.PERFORMANCE),
                    new IndexPoint("W47", 1.1, 1.0, 1.2, IndexPoint.Claim.PERFORMANCE)),
                List.of(2),
                1.33,
                "required 1.33",
                PLAIN),
            240,
            90);
    assertThat(count("<circle [^>]*fill=\"#1c2126\"", drawing)).isEqualTo(1);
    assertThat(count("<circle [^>]*fill=\"#ffffff\"", drawing)).isEqualTo(1);
    assertThat(words(drawing)).contains("W45", "W46", "W47", "required 1.33");
    // 240 pt less 34 of margins hold three weeks; the last begins after two thirds of them
    String step = Sketch.f(26 + 2 * (240 - 34) / 3.0);
    assertThat(count("d=\"M" + step + " [^\"]*V", drawing)).isEqualTo(1);
  }

  @Test
  void aLaneWithoutReadingsIsAGapInTheProfile() {
    Drawing drawing =
        LanesChart.draw(
            new LanesFigure(
                List.of(
                    new LanePoint("1", 10, 9, 11),
                    new LanePoint("2", 10.2, 9.1, 11.2),
                    new LanePoint("3", Double.NaN, Double.NaN, Double.NaN),
                    new LanePoint("4", 9.8, 9, 10.5)),
                SpecLand.NONE,
                10,
                PLAIN),
            240,
            90);
    assertThat(count("<circle", drawing)).isEqualTo(3);
    assertThat(words(drawing)).contains("1", "2", "3", "4");
  }

  /** 14, 3, 5, 3 and 35 um on 130 points: 1 um would be 2.17 points, so three are raised to 20. */
  @Test
  void thinLayersAreRaisedAndTheOthersKeepTheirProportion() {
    double[] heights = FilmSection.heights(new double[] {14, 3, 5, 3, 35}, 130);
    assertThat(heights).containsExactly(new double[] {20, 20, 20, 20, 50}, within(1e-9));
    double[] roomy = FilmSection.heights(new double[] {14, 3, 5, 3, 35}, 256);
    assertThat(roomy).containsExactly(new double[] {56, 20, 20, 20, 140}, within(1e-9));
  }

  @Test
  void eachRoleHasItsHatchAndRaisedLayersABreak() {
    List<Ply> plies =
        List.of(
            new Ply(30, "Skin", "30 um", Optional.of(Role.SKIN)),
            new Ply(2, "Tie", "2 um", Optional.of(Role.TIE)),
            new Ply(30, "Seal", "30 um", Optional.empty()));
    Drawing drawing = FilmSection.draw(plies, 300, 140);
    assertThat(drawing.shapes()).contains("hatch-skin", "hatch-tie").doesNotContain("hatch-seal");
    assertThat(count("stroke=\"#ffffff\"", drawing)).isEqualTo(2);
  }

  @Test
  void ticksAreRoundAndTellApart() {
    Span span = new Span(12.3, 15.7, 0, 100);
    assertThat(span.ticks(4)).containsExactly(13.0, 14.0, 15.0);
    assertThat(span.decimals(4)).isZero();
    Span fine = new Span(0.101, 0.139, 0, 100);
    assertThat(fine.decimals(4)).isEqualTo(2);
  }
}
