package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CrossMomentsTest {

  /** Three layers of a film; covariances computed by a general-purpose library. */
  @Test
  void covariancesAgreeWithAnotherComputation() {
    double[][] layers = {
      {12.1, 25.3, 11.8}, {12.4, 24.9, 12.0}, {11.9, 25.6, 11.7}, {12.6, 24.7, 12.3},
      {12.2, 25.1, 12.1}, {12.0, 25.4, 11.9}, {12.5, 24.8, 12.2}, {12.3, 25.0, 11.6}
    };
    double[][] expected = {
      {0.06, -0.53 / 7, 0.29 / 7}, {-0.53 / 7, 0.68 / 7, -0.36 / 7}, {0.29 / 7, -0.36 / 7, 0.06}
    };
    double[][] covariance = of(layers).covariance();

    for (int i = 0; i < 3; i++) {
      assertThat(covariance[i]).containsExactly(expected[i], within(1e-15));
    }
  }

  @Test
  void aLargeCommonPartDoesNotHideTheSpread() {
    CrossMoments moments =
        of(new double[][] {{1e9 + 1, -1e9}, {1e9 + 2, -1e9 + 2}, {1e9 + 3, -1e9 + 4}});

    assertThat(moments.means()).containsExactly(1e9 + 2, -1e9 + 2);
    assertThat(moments.covariance()[0]).containsExactly(1, 2);
    assertThat(moments.covariance()[1]).containsExactly(2, 4);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverTheyAreSplitTheMomentsAreTheSame(long seed) {
    Random random = new Random(seed);
    CrossMoments whole = new CrossMoments(3);
    CrossMoments merged = new CrossMoments(3);
    CrossMoments piece = new CrossMoments(3);
    for (int i = 0; i < 300; i++) {
      double[] vector = {100 + random.nextGaussian(), 1e6 * random.nextDouble(), random.nextInt(3)};
      whole.add(vector);
      piece.add(vector);
      if (random.nextInt(30) == 0) {
        merged.merge(Restored.from(piece));
        piece = new CrossMoments(3);
      }
    }
    merged.merge(piece);

    assertThat(merged.count()).isEqualTo(300);
    assertThat(merged.means()).containsExactly(whole.means(), within(1e-9));
    for (int i = 0; i < 3; i++) {
      assertThat(merged.covariance()[i])
          .containsExactly(whole.covariance()[i], within(1e-15 * whole.covariance()[1][1]));
    }
  }

  @Test
  void whatIsNoVectorIsRefused() {
    CrossMoments moments = new CrossMoments(2);

    assertThatThrownBy(() -> moments.add(new double[] {1}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> moments.add(new double[] {1, Double.NaN}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> moments.merge(new CrossMoments(3)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new CrossMoments(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(moments::means).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(moments::covariance).isInstanceOf(IllegalStateException.class);
  }

  private static CrossMoments of(double[][] vectors) {
    CrossMoments moments = new CrossMoments(vectors[0].length);
    for (double[] vector : vectors) {
      moments.add(vector);
    }
    return moments;
  }
}
