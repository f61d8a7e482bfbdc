package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.diagnosis.Direction.Family;
import dev.filmward.simulate.ProofFilms;
import dev.filmward.stats.ChiSquare;
import dev.filmward.stats.Normal;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The arithmetic of single looks, against other ways to the same numbers. */
class LooksTest {

  private static double[] minutes(int count) {
    return IntStream.range(0, count).mapToDouble(t -> 15.0 * t + (t % 7)).toArray();
  }

  private static double[][] noise(int count, int layers, double phi, long seed) {
    Random random = new Random(seed);
    double[][] values = new double[count][layers];
    for (int t = 0; t < count; t++) {
      for (int i = 0; i < layers; i++) {
        double news = random.nextGaussian() * Math.sqrt(1 - phi * phi);
        values[t][i] = t == 0 ? random.nextGaussian() : phi * values[t - 1][i] + news;
      }
    }
    return values;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.4, 0.9})
  void stepsAndDriftsBySumsAreThoseOfTheRegressorWrittenOut(double phi) {
    double[] minutes = minutes(60);
    Whitened white = new Whitened(noise(60, 3, 0.5, 1), minutes, phi);
    for (int from : new int[] {1, 15, 40, 57}) {
      for (Course course : List.of(Course.step(from), Course.drift(from))) {
        Whitened.Fit fast = white.fit(course);
        Whitened.Fit slow = white.fit(course.regressor(minutes));
        assertThat(fast.information()).isCloseTo(slow.information(), within(1e-9));
        assertThat(fast.coefficients()).containsExactly(slow.coefficients(), within(1e-9));
      }
    }
  }

  /** Without memory the coefficient of a step is the difference of two means. */
  @Test
  void aStepIsTheDifferenceOfTwoMeans() {
    double[][] values = {{1}, {2}, {3}, {10}, {12}};
    Whitened.Fit fit = new Whitened(values, minutes(5), 0).fitStep(3);
    assertThat(fit.coefficients()[0]).isCloseTo(11 - 2, within(1e-12));
    assertThat(1 / fit.information()).isCloseTo(1.0 / 3 + 1.0 / 2, within(1e-12));
  }

  @Test
  void theMemoryOfTheNoiseIsFound() {
    UsualNoise noise = UsualNoise.of(noise(20_000, 2, 0.6, 2));
    assertThat(noise.phi).isCloseTo(0.6, within(0.02));
    assertThat(noise.covariance[0][0]).isCloseTo(1 - 0.36, within(0.02));
    assertThat(noise.covariance[0][1]).isCloseTo(0, within(0.02));
  }

  /** Slow noise under fast noise: the correlations fade as 0.9 to the k, from 0.5. */
  @Test
  void fastNoiseDoesNotHideSlowNoise() {
    double[][] slow = noise(20_000, 1, 0.9, 3);
    Random random = new Random(4);
    for (double[] row : slow) {
      row[0] += random.nextGaussian();
    }
    double alike = 0.5 * (0.9 + 0.81 + 0.729 + 0.6561);
    double phi = UsualNoise.of(slow).phi;
    assertThat(phi + Math.pow(phi, 2) + Math.pow(phi, 3) + Math.pow(phi, 4))
        .isCloseTo(alike, within(0.08));
  }

  /**
   * Of PE (1950 m/s, 0.92) and EVOH (2700 m/s, 1.18) the slopes in micrometres are -2700/1950 =
   * -1.385 where a boundary is misread and -0.92/1.18 = -0.780 where mass is exchanged.
   */
  @Test
  void tradesKeepTheMassOrTheTimeOfFlight() {
    double[] um = {18.2, 24.1, 17.9};
    List<Direction> all = new Directions(ProofFilms.shrink().structure(), um).all();
    double[] density = {0.923, 0.955, 0.923};
    double[] velocity = {1950, 2430, 1950};
    for (Direction way : all) {
      double mass = 0;
      double time = 0;
      for (int i = 0; i < 3; i++) {
        mass += way.moves()[i] * um[i] * density[i];
        time += way.moves()[i] * um[i] / velocity[i];
      }
      if (way.family() == Family.TRADE_MASS || way.family() == Family.SKINS) {
        assertThat(mass).isCloseTo(0, within(1e-9));
      }
      if (way.family() == Family.TRADE_TIME_OF_FLIGHT) {
        assertThat(time).isCloseTo(0, within(1e-12));
      }
    }
    assertThat(all).extracting(Direction::family).contains(Family.EXTRUDER, Family.SKINS);
  }

  /** The shrink film's skins come from one extruder, the core from another. */
  @Test
  void layersOfOneExtruderMoveTogether() {
    List<Direction> all =
        new Directions(ProofFilms.shrink().structure(), new double[] {18, 24, 18}).all();
    assertThat(all)
        .filteredOn(way -> way.family() == Family.EXTRUDER)
        .singleElement()
        .satisfies(
            way -> {
              assertThat(way.positions()).containsExactly(1, 3);
              assertThat(way.moves()).containsExactly(1, 0, 1);
            });
  }

  @ParameterizedTest
  @CsvSource({"4, 1", "4, 3", "9, 0", "9, 4"})
  void theNormalEquivalentOfAChiSquareIsNear(double degrees, double z) {
    double chiSquare = new ChiSquare(degrees).upperQuantile(Normal.STANDARD.above(z));
    assertThat(LanesLook.normal(chiSquare, degrees)).isCloseTo(z, within(0.12));
  }

  @Test
  void aPeriodIsFoundWithItsLayerAndBeginning() {
    double[] minutes = IntStream.range(0, 240).mapToDouble(t -> t).toArray();
    double[][] values = noise(240, 3, 0, 5);
    for (int t = 120; t < 240; t++) {
      values[t][1] += 2 * Math.sin(2 * Math.PI * t / 9.5);
    }
    PeriodLook look = new PeriodLook(values, minutes);
    PeriodLook.Peak peak = look.highest();
    assertThat(peak.layer()).isEqualTo(1);
    assertThat(peak.periodMinutes()).isCloseTo(9.5, within(0.2));
    assertThat(peak.falseAlarm()).isLessThan(1e-6);
    assertThat(look.swing(peak).from()).isBetween(114, 126);
    assertThat(look.swing(peak).wave().amplitude()).isCloseTo(2, within(0.35));
  }

  /** Of 400 series without a period about 5 % have one with a probability below 5 %. */
  @Test
  void theProbabilityOfAPeakIsAboutThatOfNoise() {
    double[] minutes = IntStream.range(0, 100).mapToDouble(t -> 15.0 * t).toArray();
    long below =
        IntStream.range(0, 400)
            .filter(
                seed ->
                    new PeriodLook(noise(100, 2, 0.3, 100 + seed), minutes).highest().falseAlarm()
                        < 0.05)
            .count();
    assertThat(below).isBetween(3L, 45L);
  }

  @Test
  void coursesEndAtOneOrComeBack() {
    double[] minutes = minutes(30);
    assertThat(Course.step(10).regressor(minutes)[29]).isEqualTo(1);
    assertThat(Course.drift(10).regressor(minutes)[29]).isEqualTo(1);
    double[] levelling = new Course(Course.Kind.LEVELLING, 10, 14).regressor(minutes);
    assertThat(levelling[14]).isCloseTo(1 - Math.exp(-1), within(1e-12));
    double[] back = new Course(Course.Kind.UNTIL_BACK, 10, 20).regressor(minutes);
    assertThat(back[19]).isEqualTo(1);
    assertThat(Arrays.stream(back, 20, 30)).containsOnly(0.0);
  }
}
