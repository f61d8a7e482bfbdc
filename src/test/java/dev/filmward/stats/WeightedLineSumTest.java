package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A straight line by weighted least squares. */
class WeightedLineSumTest {
  /** NIST StRD, linear regression, Norris: certified values (from memory). */
  @Test
  void norrisAsCertified() throws Exception {
    WeightedLineSum line = new WeightedLineSum();
    for (double[] point : norris()) {
      line.add(point[1], point[0], 1);
    }
    assertThat(line.points()).isEqualTo(36);
    assertThat(line.intercept()).isCloseTo(-0.262323073774029, within(1e-12));
    assertThat(line.slope()).isCloseTo(1.00211681802045, within(1e-13));
    double s2 = line.residualVariance();
    assertThat(Math.sqrt(s2)).isCloseTo(0.884796396144373, within(1e-10));
    assertThat(Math.sqrt(s2 * line.varianceOfIntercept()))
        .isCloseTo(0.232818234301152, within(1e-10));
    assertThat(Math.sqrt(s2 * line.varianceOfSlope()))
        .isCloseTo(0.429796848199937e-3, within(1e-13));
  }

  /** A point of weight 2 counts as two points of weight 1. */
  @Test
  void aWeightCountsPoints() {
    WeightedLineSum once = new WeightedLineSum();
    once.add(1, 2, 2);
    once.add(4, 3, 1);
    once.add(6, 7, 1);
    WeightedLineSum twice = new WeightedLineSum();
    twice.add(1, 2, 1);
    twice.add(1, 2, 1);
    twice.add(4, 3, 1);
    twice.add(6, 7, 1);
    assertThat(once.slope()).isCloseTo(twice.slope(), within(1e-15));
    assertThat(once.intercept()).isCloseTo(twice.intercept(), within(1e-15));
    assertThat(once.chiSquare()).isCloseTo(twice.chiSquare(), within(1e-14));
    assertThat(once.covariance()).isCloseTo(twice.covariance(), within(1e-15));
  }

  @Test
  void pointsAtOnePlaceGiveNoLine() {
    WeightedLineSum line = new WeightedLineSum();
    line.add(3, 1, 1);
    line.add(3, 2, 1);
    assertThatThrownBy(line::slope).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> line.add(Double.NaN, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> line.add(1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
  }

  private static List<double[]> norris() throws Exception {
    try (InputStream in = WeightedLineSumTest.class.getResourceAsStream("strd-norris.csv");
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return reader
          .lines()
          .filter(row -> !row.startsWith("#") && !row.startsWith("y"))
          .map(row -> row.split(",", -1))
          .map(cells -> new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])})
          .toList();
    }
  }
}
