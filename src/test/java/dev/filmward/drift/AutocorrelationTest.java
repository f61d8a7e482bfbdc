package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Restored;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class AutocorrelationTest {
  private static final int LAGS = 24;

  static List<Map<String, String>> coefficients() {
    return Figures.table(AutocorrelationTest.class, "autocorrelation.csv");
  }

  @ParameterizedTest
  @MethodSource("coefficients")
  void coefficientsAreThoseOfAGeneralPurposeLibrary(Map<String, String> row) {
    double expected = Double.parseDouble(row.get("coefficient"));

    assertThat(of(values(row.get("series"))).at(Integer.parseInt(row.get("lag"))))
        .isCloseTo(expected, within(1e-12));
  }

  static List<Map<String, String>> tests() {
    return Figures.table(AutocorrelationTest.class, "ljung-box.csv");
  }

  @ParameterizedTest
  @MethodSource("tests")
  void ljungAndBoxAreThoseOfAGeneralPurposeLibrary(Map<String, String> row) {
    double statistic = Double.parseDouble(row.get("statistic"));
    double p = Double.parseDouble(row.get("p"));
    Autocorrelation.Portmanteau test =
        of(values(row.get("series"))).ljungBox(Integer.parseInt(row.get("lags")));

    assertThat(test.statistic()).isCloseTo(statistic, within(1e-11 * statistic));
    assertThat(test.p()).isCloseTo(p, within(1e-10 * p + 1e-300));
  }

  /**
   * Certified by the NIST Statistical Reference Datasets. Mavro and Michelso do not fit into
   * doubles to the last digit, which costs the 14th.
   */
  @ParameterizedTest
  @CsvSource({
    "lottery, -0.120948622967393",
    "lew, -0.307304800605679",
    "mavro, 0.937989183438248",
    "michelso, 0.535199668621283",
    "pidigits, -0.00355099287237972"
  })
  void theCertifiedLag1IsMetAsFarAsDoublesHoldTheData(String series, double certified) {
    assertThat(of(values(series)).at(1))
        .isCloseTo(certified, within(2e-15 + 5e-14 * Math.abs(certified)));
  }

  /** NIST/SEMATECH e-Handbook 1.3.5.12: the printed list for beam deflections. */
  @Test
  void thePrintedListOfTheHandbookIsMet() {
    double[] printed = {1, -0.31, -0.74, 0.77, 0.21, -0.90, 0.38, 0.63, -0.77, -0.12, 0.82};
    Autocorrelation lew = of(values("lew"));

    for (int lag = 0; lag < printed.length; lag++) {
      assertThat(lew.at(lag)).isCloseTo(printed[lag], within(0.006));
    }
    assertThat(lew.band()).isCloseTo(0.138590, within(1e-6)); // 1.959964 / sqrt(200)
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void howeverASeriesIsCutAndRestoredTheResultIsTheSame(long seed) {
    Random random = new Random(seed);
    double[] values = Simulated.noise(random, 1 + random.nextInt(200), 0.6);
    Autocorrelation pieces = new Autocorrelation(LAGS);
    for (int from = 0; from < values.length; ) {
      int to = Math.min(values.length, from + random.nextInt(60));
      pieces.append(Restored.from(of(Arrays.copyOfRange(values, from, to))));
      from = to;
    }

    Autocorrelation whole = of(values);
    assertThat(pieces.count()).isEqualTo(whole.count());
    for (int lag = 0; lag <= LAGS; lag++) {
      assertThat(pieces.at(lag)).as("lag %d", lag).isCloseTo(whole.at(lag), within(1e-13));
    }
  }

  @Test
  void addingGoesOnAfterAPieceWasAppended() {
    double[] values = Simulated.noise(new Random(4), 90, 0.3);
    Autocorrelation pieces = of(Arrays.copyOf(values, 40));
    pieces.append(of(Arrays.copyOfRange(values, 40, 70)));
    Arrays.stream(values, 70, 90).forEach(pieces::add);

    assertThat(pieces.at(5)).isCloseTo(of(values).at(5), within(1e-13));
  }

  /** Seed 11: of 4000 series of 30, where the plain coefficient is 0.08 too small on average. */
  @Test
  void theBiasOfAShortSeriesIsTakenOut() {
    Random random = new Random(11);
    Moments lag1 = new Moments();
    for (int i = 0; i < 4000; i++) {
      lag1.add(of(Simulated.noise(random, 30, 0.5)).lag1());
    }

    assertThat(lag1.mean()).isCloseTo(0.5, within(0.03));
  }

  @Test
  void numbersWithoutSpreadHaveNoAutocorrelation() {
    assertThat(of(3, 3, 3, 3).at(1)).isZero();
    assertThat(new Autocorrelation(1).at(1)).isZero();
  }

  @Test
  void whatCannotBeAskedIsRefused() {
    assertThatThrownBy(() -> of(1, 2).at(25)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> of(1, 2).lag1()).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Autocorrelation(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> of(1).append(new Autocorrelation(2)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static Autocorrelation of(double... values) {
    Autocorrelation autocorrelation = new Autocorrelation(LAGS);
    Arrays.stream(values).forEach(autocorrelation::add);
    return autocorrelation;
  }

  private static double[] values(String series) {
    boolean isSample = series.equals("nile") || series.equals("zarr13");
    String file = (isSample ? "sample-" : "strd-") + series + ".csv";
    return Arrays.stream(Figures.rows(Moments.class, file))
        .flatMapToDouble(Arrays::stream)
        .toArray();
  }
}
