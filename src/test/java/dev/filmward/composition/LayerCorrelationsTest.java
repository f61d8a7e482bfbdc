package dev.filmward.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.stats.Figures;
import java.time.Instant;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayerCorrelationsTest {
  private static final double MISSING = Double.NaN;

  /**
   * J. H. Zar, Biostatistical Analysis, Example 19.1 and 19.4: wing and tail lengths in cm of 12
   * sparrows, r = 0.870 with limits 0.592 and 0.963.
   */
  @Test
  void theTextbookCorrelationAndItsLimitsAreMet() {
    double[] wings = {10.4, 10.8, 11.1, 10.2, 10.3, 10.2, 10.7, 10.5, 10.8, 11.2, 10.6, 11.4};
    double[] tails = {7.4, 7.6, 7.9, 7.2, 7.4, 7.1, 7.4, 7.2, 7.8, 7.7, 7.8, 8.3};
    LayerCorrelations sum = new LayerCorrelations(2);
    for (int i = 0; i < wings.length; i++) {
      sum.add(new double[] {wings[i], tails[i]});
    }
    Correlation found = sum.pairs().get(0).thickness().orElseThrow();
    assertThat(found.r()).isEqualTo(0.870, within(5e-4));
    assertThat(found.lower()).isEqualTo(0.592, within(5e-4));
    assertThat(found.upper()).isEqualTo(0.963, within(5e-4));
    assertThat(sum.pairs().get(0).share().orElseThrow().r())
        .as("what one of two layers gains the other loses")
        .isEqualTo(-1, within(1e-9));
  }

  /** By a general-purpose library: Pearson's r and Fisher's limits of forty samples. */
  @ParameterizedTest
  @CsvSource({
    "thickness, 1, 2, -0.041049940694870155, -0.34810788092578693, 0.27396268982274574",
    "share, 1, 2, -0.266528376280901, -0.5337246585373464, 0.049053709994091844",
    "log-ratio, 1, 2, -0.47328833837419937, -0.683959045748457, -0.1897553274139192",
    "thickness, 1, 4, 0.4711527196799869, 0.18710439827340825, 0.6824935323653721",
    "share, 1, 4, -0.7149649485639027, -0.8395018921055885, -0.5190596688009033",
    "log-ratio, 1, 4, 0.2523912445638465, -0.06416272074725653, 0.5227971171591581",
    "thickness, 3, 4, 0.06191295909875779, -0.25450488967309115, 0.36635658441928765",
    "share, 3, 4, -0.34686408741709207, -0.5941722855061227, -0.0396376413174334",
    "log-ratio, 3, 4, -0.3242026590890462, -0.5773992146207705, -0.01411924294456754"
  })
  void thicknessesSharesAndLogRatiosAgreeWithAnotherComputation(
      String what, int first, int second, double r, double lower, double upper) {
    LayerCorrelations sum = new LayerCorrelations(4);
    for (Map<String, String> row : Figures.table(getClass(), "four-layers.csv").subList(0, 40)) {
      sum.add(
          new double[] {
            number(row, "one"), number(row, "two"), number(row, "three"), number(row, "four")
          });
    }
    LayerPair pair =
        sum.pairs().stream()
            .filter(each -> each.first() == first && each.second() == second)
            .findFirst()
            .orElseThrow();
    Correlation found =
        switch (what) {
          case "thickness" -> pair.thickness().orElseThrow();
          case "share" -> pair.share().orElseThrow();
          default -> pair.logRatio().orElseThrow();
        };
    assertThat(found.r()).isEqualTo(r, within(1e-10));
    assertThat(found.lower()).isEqualTo(lower, within(1e-10));
    assertThat(found.upper()).isEqualTo(upper, within(1e-10));
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  /** Layer 1 gives to layer 2 what it has too much; layer 3 minds its own business. */
  @Test
  void aTradeAtConstantTotalIsTold() {
    Random random = new Random(5);
    LayerCorrelations sum = new LayerCorrelations(3);
    LayerCorrelations few = new LayerCorrelations(3);
    for (int i = 0; i < 40; i++) {
      double given = random.nextGaussian();
      double[] layers = {
        20 + given, 10 - given + 0.1 * random.nextGaussian(), 30 + random.nextGaussian()
      };
      sum.add(layers);
      if (i < 7) {
        few.add(layers);
      }
    }
    assertThat(sum.pairs().stream().filter(LayerPair::isTrade))
        .singleElement()
        .satisfies(pair -> assertThat(pair.first() + " " + pair.second()).isEqualTo("1 2"));
    assertThat(few.pairs()).noneMatch(LayerPair::isTrade);
  }

  /** One gains ten times what the other loses: the total is not constant. */
  @Test
  void oppositeIsNoTradeWhereTheTotalMoves() {
    LayerCorrelations sum = new LayerCorrelations(2);
    for (int i = 0; i < 20; i++) {
      sum.add(new double[] {20 + i % 5, 10 - 0.1 * (i % 5)});
    }
    assertThat(sum.pairs().get(0).thickness().orElseThrow().r()).isEqualTo(-1, within(1e-9));
    assertThat(sum.pairs()).noneMatch(LayerPair::isTrade);
  }

  @Test
  void whatDoesNotVaryHasNoCorrelation() {
    LayerCorrelations sum = new LayerCorrelations(2);
    for (int i = 0; i < 20; i++) {
      sum.add(new double[] {20, 10 + i % 3});
    }
    assertThat(sum.pairs().get(0).thickness()).isEmpty();
    assertThatIllegalArgumentException().isThrownBy(() -> sum.add(new double[] {0, 1}));
    assertThatIllegalArgumentException().isThrownBy(() -> new LayerCorrelations(1));
  }

  /** Lane 2 lacks a layer, so only lanes 1 and 3 count. */
  @Test
  void layerMeansAreOfTheLanesThatWereReadWhole() {
    SampleKey key = new SampleKey("Line", "S", "R", "1");
    double[][] um = {{10, 30, 14}, {4, MISSING, 6}};
    Sample sample = new Sample(key, Instant.EPOCH, new int[] {1, 2, 3}, um);
    assertThat(LayerMeans.of(sample).orElseThrow()).containsExactly(12, 5);
    double[][] none = {{10, MISSING}, {MISSING, 5}};
    assertThat(LayerMeans.of(new Sample(key, Instant.EPOCH, new int[] {1, 2}, none))).isEmpty();
  }
}
