package dev.filmward.variation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class WebVariationTest {
  /** Rows are samples, columns lanes; built by hand. */
  private static final double[][] SCANS = {
    {12, 14, 11, 13, 15},
    {13, 16, 12, 13, 16},
    {11, 13, 10, 12, 14},
    {14, 15, 13, 14, 19},
    {12, 14, 11, 15, 13}
  };

  /**
   * Montgomery, Design and Analysis of Experiments, two-way random model: the mean squares of SCANS
   * are 6.5 along, 12.5 across and 1 for the rest, so (6.5 - 1) / 5, (12.5 - 1) / 5 and 1.
   */
  @Test
  void splitsIntoTheComponentsOfTheTwoWayModel() {
    WebComponents parts = of(SCANS, 13);
    assertThat(parts.machineDirection()).isEqualTo(5.5 / 5, within(1e-12));
    assertThat(parts.crossDirection()).isEqualTo(11.5 / 5, within(1e-12));
    assertThat(parts.residual()).isEqualTo(1, within(1e-12));
    assertThat(parts.meanUm()).isEqualTo(335 / 25.0, within(1e-12));
    assertThat(parts.twoSigmaPercent(parts.residual())).isEqualTo(200 / 13.4, within(1e-9));
  }

  @Test
  void theOriginDoesNotMatter() {
    assertThat(of(SCANS, 0).crossDirection())
        .isEqualTo(of(SCANS, 13).crossDirection(), within(1e-12));
  }

  @Test
  void anEstimateBelowZeroIsKeptAndCountsAsZero() {
    WebComponents parts = of(new double[][] {{1, 2}, {2, 1}}, 0);
    assertThat(parts.machineDirection()).isEqualTo(-0.5, within(1e-12));
    assertThat(parts.twoSigmaPercent(parts.machineDirection())).isZero();
  }

  @Test
  void aSampleWithAMissingLaneIsCountedAndLeftOut() {
    WebVariation variation = new WebVariation(5, 13);
    variation.add(new double[] {12, Double.NaN, 11, 13, 15});
    for (double[] scan : SCANS) {
      variation.add(scan);
    }
    assertThat(variation.incomplete()).isEqualTo(1);
    assertThat(variation.components()).contains(of(SCANS, 13));
  }

  @Test
  void mergedItIsWhatItWouldBeInOne() {
    WebVariation first = new WebVariation(5, 13);
    WebVariation second = new WebVariation(5, 13);
    for (int i = 0; i < SCANS.length; i++) {
      (i < 2 ? first : second).add(SCANS[i]);
    }
    first.merge(second);
    assertThat(first.components().orElseThrow().residual()).isEqualTo(1, within(1e-12));
    assertThatIllegalArgumentException().isThrownBy(() -> first.merge(new WebVariation(4, 13)));
  }

  /**
   * Against a simulation of mean and range charts: five lanes that differ steadily by 1 %, samples
   * by 1.5 %, readings by 1 % (all standard deviations). Many webs, since the lanes are drawn too.
   */
  @Test
  void foretellsTheFalseSignalsOfRangesAcrossTheWeb() {
    WebComponents parts = new WebComponents(1000, 5, 100, 1.5 * 1.5, 1, 1);
    assertThat(parts.verdict()).isEqualTo(WebComponents.Verdict.NERVOUS);
    assertThat(parts.falseSignalsPer1000()).isBetween(0.9 * simulated(), 1.1 * simulated());
  }

  @Test
  void steadyLanesBlindTheMeanChart() {
    WebComponents parts = new WebComponents(1000, 5, 100, 0.25, 9, 1);
    assertThat(parts.verdict()).isEqualTo(WebComponents.Verdict.BLIND);
    assertThat(parts.words()).contains("three-way chart");
    assertThat(new WebComponents(1000, 5, 100, 0, 0.05, 1).verdict())
        .isEqualTo(WebComponents.Verdict.SUITED);
  }

  private static double simulated() {
    Random random = new Random(7);
    // A2 of five readings (ASTM MNL 7)
    double a2 = 0.577;
    int webs = 400;
    int samples = 200;
    long outside = 0;
    for (int web = 0; web < webs; web++) {
      double[] lanes = random.doubles(5).map(unused -> random.nextGaussian()).toArray();
      double[] means = new double[samples];
      double ranges = 0;
      double centre = 0;
      for (int i = 0; i < samples; i++) {
        double level = 1.5 * random.nextGaussian();
        double least = Double.MAX_VALUE;
        double greatest = -Double.MAX_VALUE;
        for (double lane : lanes) {
          double reading = level + lane + random.nextGaussian();
          means[i] += reading / 5;
          least = Math.min(least, reading);
          greatest = Math.max(greatest, reading);
        }
        ranges += (greatest - least) / samples;
        centre += means[i] / samples;
      }
      for (double mean : means) {
        outside += Math.abs(mean - centre) > a2 * ranges ? 1 : 0;
      }
    }
    return 1000.0 * outside / (webs * samples);
  }

  private static WebComponents of(double[][] scans, double origin) {
    WebVariation variation = new WebVariation(scans[0].length, origin);
    for (double[] scan : scans) {
      variation.add(scan);
    }
    return variation.components().orElseThrow();
  }
}
