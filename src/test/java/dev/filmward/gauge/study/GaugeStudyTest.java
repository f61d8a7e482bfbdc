package dev.filmward.gauge.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.AnovaTable.Part;
import dev.filmward.stats.Figures;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Analysis of variance, components, shares and verdict of a crossed study. */
class GaugeStudyTest {

  /**
   * By hand. Cells: 10 12 | 11 15 and 20 22 | 27 27. Cell means 11, 13, 21, 27; grand mean 18;
   * parts 12 and 24; operators 16 and 20. Part: 2*2*(6² + 6²) = 288. Operator: 2*2*(2² + 2²) = 32.
   * Interaction: left over are 11-12-16+18 = 1, -1, -1, 1, so 2*4*1² = 8. Repeatability: 1+1 + 4+4
   * + 1+1 + 0+0 = 12 with 4 degrees. All squares less 8*18²: 2932 - 2592 = 340.
   */
  private static final double[][][] TWO_BY_TWO_BY_TWO = {
    {{10, 12}, {11, 15}}, {{20, 22}, {27, 27}}
  };

  @Test
  void theSmallestStudyIsAnalysedAsByHand() {
    GaugeStudy study = Readings.study(Readings.of(TWO_BY_TWO_BY_TWO));
    StudyAnova anova = study.anova();
    assertPart(anova.part().part(), 288, 1);
    assertPart(anova.operator().orElseThrow().part(), 32, 1);
    assertPart(anova.interaction().orElseThrow().part(), 8, 1);
    assertPart(anova.repeatability(), 12, 4);
    assertPart(anova.total(), 340, 7);
    // F(1, 4) = 8/3 is t² of t with 4 degrees: 1 - sin(1 + cos²/2), where tan² = (8/3)/4
    assertThat(anova.interaction().orElseThrow().f()).isCloseTo(8.0 / 3, within(1e-14));
    assertThat(anova.interaction().orElseThrow().p())
        .isCloseTo(1 - 1.3 * Math.sqrt(0.4), within(1e-12));
    // 0.178: kept, so the others are tested against it
    assertThat(anova.isPooled()).isFalse();
    assertThat(anova.part().f()).isEqualTo(36);
    // F(1, 1) = 36: 1 - 2/pi atan(6)
    assertThat(anova.part().p()).isCloseTo(1 - 2 / Math.PI * Math.atan(6), within(1e-12));
    assertThat(anova.operator().orElseThrow().f()).isEqualTo(4);
    // (32 - 8)/4, (8 - 3)/2, (288 - 8)/4
    assertThat(study.raw()).isEqualTo(new Components(3, 6, 2.5, 70));
    assertThat(study.variance().reproducibility()).isEqualTo(8.5);
    assertThat(study.variance().gauge()).isEqualTo(11.5);
    assertThat(study.variance().total()).isEqualTo(81.5);
    assertThat(study.percentStudyVariation())
        .isCloseTo(100 * Math.sqrt(11.5 / 81.5), within(1e-12));
    // 1.41 * sqrt(70/11.5) = 3.48
    assertThat(study.distinctCategories()).isEqualTo(3);
    assertThat(study.verdict()).isEqualTo(GaugeVerdict.NOT_ACCEPTABLE);
  }

  /**
   * By hand. Three parts, two operators, two trials: cells 1 3 | 2 4, 5 7 | 6 8, 9 11 | 8 14. Cell
   * means 2, 3, 6, 7, 10, 11: operators differ by 1 everywhere, so the interaction is 0. Grand mean
   * 6.5, parts 2.5, 6.5, 10.5, operators 6 and 7. Part: 4*(16 + 0 + 16) = 128. Operator: 6*(0.25 +
   * 0.25) = 3. Repeatability: 2 + 2 + 2 + 2 + 2 + 18 = 28 with 6 degrees.
   */
  @Test
  void anInteractionThatMayBeNothingIsPooledAndItsRowStays() {
    double[][][] um = {{{1, 3}, {2, 4}}, {{5, 7}, {6, 8}}, {{9, 11}, {8, 14}}};
    GaugeStudy study = Readings.study(Readings.of(um));
    StudyAnova anova = study.anova();
    assertPart(anova.part().part(), 128, 2);
    assertPart(anova.operator().orElseThrow().part(), 3, 1);
    assertPart(anova.interaction().orElseThrow().part(), 0, 2);
    assertPart(anova.repeatability(), 28, 6);
    assertPart(anova.total(), 159, 11);
    assertThat(anova.interaction().orElseThrow().p()).isEqualTo(1);
    assertThat(anova.isPooled()).isTrue();
    assertPart(anova.error(), 28, 8);
    // 28/8 = 3.5; 64/3.5; 3/3.5, less than 1, so the operator's estimate is negative
    assertThat(anova.part().f()).isCloseTo(64 / 3.5, within(1e-12));
    assertThat(anova.operator().orElseThrow().f()).isCloseTo(3 / 3.5, within(1e-12));
    assertThat(study.raw().operator()).isCloseTo((3 - 3.5) / 6, within(1e-14));
    assertThat(study.raw().part()).isCloseTo((64 - 3.5) / 4, within(1e-13));
    assertThat(study.raw().interaction()).isZero();
    assertThat(study.variance().operator()).isZero();
    assertThat(study.variance().gauge()).isCloseTo(3.5, within(1e-14));
  }

  @ParameterizedTest
  @ValueSource(strings = {"kept", "pooled", "thin", "level"})
  void everyFigureIsThatOfAGeneralPurposeComputation(String name) {
    StudyAnova anova = Readings.study(Readings.file("study-" + name + ".csv")).anova();
    Map<String, Map<String, String>> expected =
        Figures.table(GaugeStudyTest.class, "expected.csv").stream()
            .filter(row -> row.get("study").equals(name))
            .collect(Collectors.toMap(row -> row.get("row"), row -> row));
    assertRow(anova.part(), expected.get("part"));
    assertRow(anova.operator().orElseThrow(), expected.get("operator"));
    assertRow(anova.interaction().orElseThrow(), expected.get("interaction"));
    assertRow(anova.repeatability(), expected.get("repeatability"));
    Part error = anova.isPooled() ? anova.error() : anova.interaction().orElseThrow().part();
    assertRow(error, expected.get("error"));
  }

  /** Printed in Montgomery: squares to 3 digits; components of the reduced model from memory. */
  @Test
  void twentyPartsOfATextbook() {
    GaugeStudy study = Readings.study(Readings.file("twenty-parts.csv"), SpecLimits.of(5, 30, 60));
    StudyAnova anova = study.anova();
    assertThat(anova.part().part().sumOfSquares()).isCloseTo(1185.425, within(5e-4));
    assertThat(anova.operator().orElseThrow().part().sumOfSquares()).isCloseTo(2.617, within(5e-4));
    assertThat(anova.interaction().orElseThrow().part().sumOfSquares())
        .isCloseTo(27.050, within(5e-4));
    assertThat(anova.repeatability().sumOfSquares()).isCloseTo(59.500, within(5e-4));
    assertThat(anova.interaction().orElseThrow().p()).isCloseTo(0.861, within(5e-4));
    assertThat(anova.isPooled()).isTrue();
    assertThat(study.variance().part()).isCloseTo(10.2513, within(5e-5));
    assertThat(study.variance().operator()).isCloseTo(0.0106, within(5e-5));
    assertThat(study.variance().repeatability()).isCloseTo(0.8832, within(5e-5));
    // 6 * sqrt(0.8938)/(60 - 5)
    assertThat(study.percentTolerance().orElseThrow()).isCloseTo(10.31, within(0.01));
  }

  /** Printed in the manual of AIAG, from memory: squares, standard deviations, 27.9 %, 4. */
  @Test
  void tenPartsOfAManual() {
    GaugeStudy study = Readings.study(Readings.file("ten-parts.csv"));
    StudyAnova anova = study.anova();
    assertThat(anova.part().part().sumOfSquares()).isCloseTo(88.3619, within(5e-5));
    assertThat(anova.operator().orElseThrow().part().sumOfSquares())
        .isCloseTo(3.1673, within(5e-5));
    assertThat(anova.interaction().orElseThrow().part().sumOfSquares())
        .isCloseTo(0.3590, within(5e-5));
    assertThat(anova.repeatability().sumOfSquares()).isCloseTo(2.7589, within(5e-5));
    assertThat(anova.total().sumOfSquares()).isCloseTo(94.6471, within(5e-5));
    assertThat(Math.sqrt(study.variance().repeatability())).isCloseTo(0.199933, within(2e-6));
    assertThat(Math.sqrt(study.variance().gauge())).isCloseTo(0.302373, within(2e-6));
    assertThat(Math.sqrt(study.variance().part())).isCloseTo(1.042327, within(2e-6));
    assertThat(study.percentStudyVariation()).isCloseTo(27.9, within(0.05));
    assertThat(study.distinctCategories()).isEqualTo(4);
    assertThat(study.verdict()).isEqualTo(GaugeVerdict.CONDITIONAL);
  }

  /**
   * One operator: one-way. NIST StRD, set SiRstv (five instruments as parts, five readings each):
   * certified between 5.11462616e-2, within 2.16636560e-1, F 1.18046237440255.
   */
  @Test
  void withOneOperatorTheOneWayTableOfAReferenceSetIsMet() {
    double[][] groups = Figures.rows(Figures.class, "strd-sirstv.csv");
    double[][][] um = new double[groups.length][1][];
    for (int part = 0; part < groups.length; part++) {
      um[part][0] = groups[part];
    }
    GaugeStudy study = Readings.study(Readings.of(um));
    assertThat(study.anova().part().part().sumOfSquares())
        .isCloseTo(5.11462616000000e-2, withinPercentage(1e-10));
    assertThat(study.anova().repeatability().sumOfSquares())
        .isCloseTo(2.16636560000000e-1, withinPercentage(1e-10));
    assertThat(study.anova().part().f()).isCloseTo(1.18046237440255, withinPercentage(1e-10));
    assertThat(study.hasReproducibility()).isFalse();
    assertThat(study.variance().gauge()).isEqualTo(study.variance().repeatability());
    // (MS between - MS within)/5
    assertThat(study.variance().part())
        .isCloseTo((5.11462616e-2 / 4 - 2.1663656e-1 / 20) / 5, withinPercentage(1e-7));
  }

  @Test
  void aToleranceOfOneLimitIsTwiceTheWayToTheMean() {
    StudyReadings readings = Readings.of(TWO_BY_TWO_BY_TWO);
    double six = 6 * Math.sqrt(11.5);
    assertThat(percentTolerance(readings, SpecLimits.of(10, 18, 26)))
        .isCloseTo(100 * six / 16, within(1e-10));
    // the mean of all readings is 18
    assertThat(percentTolerance(readings, Readings.from(8)))
        .isCloseTo(100 * six / (2 * (18 - 8)), within(1e-10));
    assertThat(percentTolerance(readings, Readings.upTo(50)))
        .isCloseTo(100 * six / (2 * (50 - 18)), within(1e-10));
    assertThat(Readings.study(readings, Readings.from(19)).percentTolerance()).isEmpty();
    assertThat(Readings.study(readings).percentTolerance()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"9.99, ACCEPTABLE", "10, CONDITIONAL", "30, CONDITIONAL", "30.01, NOT_ACCEPTABLE"})
  void theVerdictGoesByTheUsualBounds(double percent, GaugeVerdict expected) {
    assertThat(GaugeVerdict.of(percent)).isEqualTo(expected);
  }

  @Test
  void theWorseOfBothVerdictsHolds() {
    StudyReadings readings = Readings.file("study-kept.csv");
    GaugeStudy wide = Readings.study(readings, SpecLimits.of(0, 14, 1000));
    assertThat(wide.verdictForTolerance()).contains(GaugeVerdict.ACCEPTABLE);
    assertThat(wide.verdict()).isEqualTo(wide.verdictForProcess());
    GaugeStudy narrow = Readings.study(readings, SpecLimits.of(13.9, 14, 14.1));
    assertThat(narrow.verdict()).isEqualTo(GaugeVerdict.NOT_ACCEPTABLE);
  }

  @Test
  void theOrderOfReadingsAndACommonPartChangeNothing() {
    double[][][] um = new double[3][2][3];
    double[][][] lifted = new double[3][2][3];
    for (int i = 0; i < 18; i++) {
      double value = (i * 7 % 11) / 8.0;
      um[i / 6][i / 3 % 2][i % 3] = value;
      lifted[i / 6][i / 3 % 2][i % 3] = value + 0x1p40;
    }
    assertThat(Readings.study(Readings.of(lifted)).anova())
        .isEqualTo(Readings.study(Readings.of(um)).anova());
  }

  private static double percentTolerance(StudyReadings readings, SpecLimits limits) {
    return Readings.study(readings, limits).percentTolerance().orElseThrow();
  }

  private static void assertRow(StudyAnova.Line line, Map<String, String> expected) {
    assertRow(line.part(), expected);
    assertThat(line.f()).isCloseTo(Double.parseDouble(expected.get("f")), withinPercentage(1e-8));
    assertThat(line.p()).isCloseTo(Double.parseDouble(expected.get("p")), withinPercentage(1e-6));
  }

  private static void assertRow(Part part, Map<String, String> expected) {
    assertThat(part.sumOfSquares())
        .isCloseTo(Double.parseDouble(expected.get("ss")), withinPercentage(1e-8));
    assertThat(part.degrees()).isEqualTo(Long.parseLong(expected.get("df")));
  }

  private static void assertPart(Part part, double squares, long degrees) {
    assertThat(part.sumOfSquares()).isCloseTo(squares, within(1e-12 * Math.max(1, squares)));
    assertThat(part.degrees()).isEqualTo(degrees);
  }
}
