package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CholeskyTest {
  /** Of determinant 11, with the inverse {{3, -1}, {-1, 4}} / 11. */
  private static final double[][] MATRIX = {{4, 1}, {1, 3}};

  @Test
  void equationsAreSolved() {
    assertThat(new Cholesky(MATRIX).solve(new double[] {11, 22}))
        .containsExactly(new double[] {3 - 2, -1 + 8}, within(1e-14));
  }

  @Test
  void theQuadraticFormIsThatOfTheInverse() {
    assertThat(new Cholesky(MATRIX).quadraticForm(new double[] {1, 2}))
        .isCloseTo((3 - 4 + 16) / 11.0, within(1e-15));
  }

  @Test
  void whatIsGivenStaysAsItIs() {
    double[] x = {1, 2};
    new Cholesky(MATRIX).solve(x);

    assertThat(x).containsExactly(1, 2);
  }

  @Test
  void aComponentThatSaysNothingNewIsRefused() {
    assertThatThrownBy(() -> new Cholesky(new double[][] {{1, 2, 3}, {2, 4, 6}, {3, 6, 10}}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("component 2");
    assertThatThrownBy(() -> new Cholesky(new double[][] {{0}}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
