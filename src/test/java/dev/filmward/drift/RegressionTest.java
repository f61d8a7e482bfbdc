package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RegressionTest {

  /** Written out with the whole covariance matrix of the noise and a general-purpose library. */
  @ParameterizedTest
  @CsvSource({"STEP, 20, 0", "STEP, 12, 0.5", "RAMP, 0, 0.7", "RAMP, 15, -0.4", "RAMP, 25, 0.9"})
  void generalisedLeastSquaresIsThatOfTheWholeMatrix(Shape shape, int from, double phi) {
    Window window =
        new Window(Simulated.series(Simulated.noise(new Random(1), 40, 0.3), i -> 0.1 * i));
    double[] regressor = shape.regressor(window, from);
    LineFit fit = Shape.regression(window, regressor, from).fitAt(phi);

    RealMatrix design = new Array2DRowRealMatrix(window.size(), 2);
    design.setColumn(0, window.ones);
    design.setColumn(1, regressor);
    RealMatrix inverse =
        new LUDecomposition(covariance(window.size(), phi)).getSolver().getInverse();
    RealMatrix normal = design.transpose().multiply(inverse).multiply(design);
    RealMatrix factors = new LUDecomposition(normal).getSolver().getInverse();
    RealVector means = new ArrayRealVector(window.means);
    RealVector solution = factors.operate(design.transpose().operate(inverse.operate(means)));
    RealVector rest = means.subtract(design.operate(solution));

    assertThat(fit.level()).isCloseTo(solution.getEntry(0), within(1e-12));
    assertThat(fit.rate()).isCloseTo(solution.getEntry(1), within(1e-11));
    assertThat(fit.squares()).isCloseTo(rest.dotProduct(inverse.operate(rest)), within(1e-12));
    assertThat(fit.factors().level()).isCloseTo(factors.getEntry(0, 0), within(1e-10));
    assertThat(fit.factors().cross()).isCloseTo(factors.getEntry(0, 1), within(1e-10));
    assertThat(fit.factors().rate()).isCloseTo(factors.getEntry(1, 1), within(1e-9));
  }

  private static RealMatrix covariance(int size, double phi) {
    double[][] entries = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        entries[i][j] = Math.pow(phi, Math.abs(i - j)) / (1 - phi * phi);
      }
    }
    return new Array2DRowRealMatrix(entries);
  }
}
