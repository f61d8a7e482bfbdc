package dev.filmward.gauge.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.gauge.study.Linearity.Weighting;
import dev.filmward.stats.Figures;
import dev.filmward.stats.WeightedLine;
import dev.filmward.stats.WeightedLine.Estimate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Bias and linearity of five reference parts. Figures marked "computed" come from the same readings
 * by scipy 1.17.1 (ttest_1samp) and statsmodels 0.15.0 (OLS, WLS) under Python 3.11.7.
 */
class ReferenceStudyTest {

  private static List<ReferencePiece> pieces() {
    ReferenceReadings readings = new ReferenceReadings();
    int number = 0;
    for (Map<String, String> row : Figures.table(ReferenceStudyTest.class, "five-references.csv")) {
      double um = Double.parseDouble(row.get("thickness_um"));
      String part = row.get("reference");
      readings.add(new StudyReading(part, "A", "" + number++, "1", um), Double.parseDouble(part));
    }
    return readings.pieces("1");
  }

  /** Printed: .491667, .125, .025, -.29167, -.616667; the rest computed. */
  @Test
  void theBiasOfEachPartIsThePrintedOne() {
    List<ReferencePiece> pieces = pieces();
    assertThat(pieces).hasSize(5);
    double[] printed = {0.491667, 0.125, 0.025, -0.29167, -0.616667};
    for (int i = 0; i < 5; i++) {
      assertThat(pieces.get(i).bias().value()).isCloseTo(printed[i], within(4e-6));
    }
    ReferencePiece.Bias first = pieces.get(0).bias();
    assertThat(first.deviation()).isCloseTo(0.12401124093721465, withinPercentage(1e-9));
    assertThat(first.t()).isCloseTo(13.734104112156226, withinPercentage(1e-9));
    assertThat(first.p()).isCloseTo(2.8723331044428365e-08, withinPercentage(1e-6));
    assertThat(first.lower()).isCloseTo(2.412873683286904 - 2, within(1e-10));
    assertThat(first.upper()).isCloseTo(2.570459650046429 - 2, within(1e-10));
    assertThat(first.isReal()).isTrue();
    assertThat(pieces.get(1).bias().p()).isCloseTo(0.35399132526768273, within(1e-9));
    assertThat(pieces.get(1).bias().isReal()).isFalse();
  }

  /** Printed: bias = 0.7367 - 0.1317 x, R² 0.714, s 0.23954, t -12.043 and 10.158. */
  @Test
  void theLinearityIsThePrintedOne() {
    WeightedLine line = Linearity.of(pieces(), Weighting.ALIKE).orElseThrow().line();
    assertThat(line.slope()).isCloseTo(-0.1317, within(5e-5));
    assertThat(line.intercept().value()).isCloseTo(0.7367, within(5e-5));
    assertThat(line.rSquared()).isCloseTo(0.714, within(5e-4));
    assertThat(Math.sqrt(line.residualVariance())).isCloseTo(0.23954, within(5e-6));
    assertThat(line.slopeEstimate().t()).isCloseTo(-12.043, within(5e-4));
    assertThat(line.intercept().t()).isCloseTo(10.158, within(5e-4));
    // computed
    assertThat(line.p(line.slopeEstimate()))
        .isCloseTo(2.0377155822857986e-17, withinPercentage(1e-5));
    assertThat(line.at(7).value()).isCloseTo(-0.185, within(1e-12));
    assertInterval(line, line.at(7), -0.25065700688861625, -0.11934299311138355);
  }

  /** All computed, with weights of one over the variance of each part's readings. */
  @Test
  void weighedBySpreadTheLineIsThatOfAGeneralPurposeComputation() {
    WeightedLine line = Linearity.of(pieces(), Weighting.BY_SPREAD).orElseThrow().line();
    assertThat(line.slope()).isCloseTo(-0.135128782359413, withinPercentage(1e-9));
    assertThat(line.intercept().value()).isCloseTo(0.7739961158781712, withinPercentage(1e-9));
    assertThat(line.slopeEstimate().standardError())
        .isCloseTo(0.006233699170316798, withinPercentage(1e-8));
    assertThat(line.intercept().t()).isCloseTo(17.41026945100958, withinPercentage(1e-8));
    assertThat(line.rSquared()).isCloseTo(0.8901303916977545, withinPercentage(1e-8));
    assertThat(Math.sqrt(line.residualVariance()))
        .isCloseTo(1.0013921526234042, withinPercentage(1e-8));
    assertInterval(line, line.at(7), -0.20956129208934698, -0.13424942918609267);
  }

  @Test
  void onePieceHasABiasAndNoLinearityAndReadingsAllAlikeHaveNoTest() {
    ReferencePiece one = new ReferencePiece("foil", 10, List.of(10.2, 10.4));
    // mean 0.3 off, deviation 0.1 sqrt(2), so the standard error is 0.1
    assertThat(one.bias().value()).isCloseTo(0.3, within(1e-12));
    assertThat(one.bias().t()).isCloseTo(3, within(1e-10));
    // t with one degree: 1 - 2/pi atan(3)
    assertThat(one.bias().p()).isCloseTo(1 - 2 / Math.PI * Math.atan(3), within(1e-10));
    assertThat(Linearity.of(List.of(one), Weighting.ALIKE)).isEmpty();
    ReferencePiece alike = new ReferencePiece("foil", 20, List.of(20.5, 20.5));
    assertThatIllegalStateException().isThrownBy(alike::bias);
    assertThat(Linearity.of(List.of(one, alike), Weighting.BY_SPREAD)).isEmpty();
    assertThat(Linearity.of(List.of(one, alike), Weighting.ALIKE)).isPresent();
  }

  private static void assertInterval(
      WeightedLine line, Estimate estimate, double lower, double upper) {
    double half = line.halfWidth(estimate, 0.95);
    assertThat(estimate.value() - half).isCloseTo(lower, within(1e-10));
    assertThat(estimate.value() + half).isCloseTo(upper, within(1e-10));
  }
}
