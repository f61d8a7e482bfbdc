package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the non-central t is for: confidence limits of Cpk and tolerance factors. */
class NoncentralTUseTest {

  static Stream<Map<String, String>> cpkLimits() {
    return Figures.table(NoncentralTUseTest.class, "cpk-limits.csv").stream();
  }

  static Stream<Map<String, String>> toleranceFactors() {
    return Figures.table(NoncentralTUseTest.class, "tolerance-factors.csv").stream();
  }

  @ParameterizedTest
  @MethodSource("cpkLimits")
  void exactLimitsOfCpkAreMet(Map<String, String> row) {
    checkLimit(row, "lower90", 0.1);
    checkLimit(row, "lower95", 0.05);
    checkLimit(row, "lower99", 0.01);
    checkLimit(row, "lower975", 0.025);
    checkLimit(row, "upper975", 0.975);
  }

  private static void checkLimit(Map<String, String> row, String heading, double q) {
    int n = Integer.parseInt(row.get("n"));
    double scale = 3 * Math.sqrt(n);
    double t = scale * Double.parseDouble(row.get("cpk"));
    double expected = Double.parseDouble(row.get(heading));

    assertThat(NoncentralT.deltaWithAbove(t, n - 1, q) / scale)
        .as(heading)
        .isCloseTo(expected, within(1e-10 * expected));
  }

  @ParameterizedTest
  @MethodSource("toleranceFactors")
  void oneSidedToleranceFactorsAreMet(Map<String, String> row) {
    int n = Integer.parseInt(row.get("n"));
    double z = Normal.STANDARD.quantile(Double.parseDouble(row.get("coverage")));
    double k1 = Double.parseDouble(row.get("k1"));
    Distribution t = new NoncentralT(n - 1, z * Math.sqrt(n));

    assertThat(t.quantile(Double.parseDouble(row.get("confidence"))) / Math.sqrt(n))
        .isCloseTo(k1, within(1e-10 * k1));
  }
}
