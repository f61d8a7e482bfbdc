package dev.filmward.gauge.echo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class ReflectionTest {

  @ParameterizedTest
  @CsvFileSource(resources = "reflections.csv", delimiter = '|', numLinesToSkip = 5)
  void isTheContrastOfImpedances(
      String before,
      double velocity,
      double density,
      String behind,
      double velocityBehind,
      double densityBehind,
      String printed,
      double printedDb) {
    double first = velocity * density;
    double second = velocityBehind * densityBehind;
    Reflection reflection =
        Reflection.between(
            new Medium(before, velocity, density),
            new Medium(behind, velocityBehind, densityBehind));
    assertThat(reflection.coefficient())
        .isCloseTo((second - first) / (second + first), within(1e-15))
        .isCloseTo(Double.parseDouble(printed), within(0.0006));
    assertThat(reflection.transmission()).isCloseTo(2 * second / (first + second), within(1e-15));
    assertThat(reflection.decibels()).isCloseTo(printedDb, within(0.6));
    assertThat(reflection.polarity().sign()).isEqualTo(printed.substring(0, 1));
  }

  /** Energy is neither made nor lost: R^2 + (Z1 / Z2) T^2 = 1. */
  @Test
  void energyIsKept() {
    Medium film = new Medium("film", 1950, 920);
    Medium barrier = new Medium("barrier", 2700, 1180);
    Reflection into = Reflection.between(film, barrier);
    double energy =
        into.coefficient() * into.coefficient()
            + film.impedanceMrayl() / barrier.impedanceMrayl() * Math.pow(into.transmission(), 2);
    assertThat(energy).isCloseTo(1, within(1e-15));
  }

  @Test
  void thereAndBackIsTheProductOfBothTransmissions() {
    Medium film = new Medium("film", 1950, 920);
    Medium barrier = new Medium("barrier", 2700, 1180);
    Reflection into = Reflection.between(film, barrier);
    Reflection out = Reflection.between(barrier, film);
    assertThat(into.thereAndBack())
        .isCloseTo(into.transmission() * out.transmission(), within(1e-15));
  }

  @Test
  void nothingComesBackFromTheSameMedium() {
    Medium film = new Medium("film", 1950, 920);
    assertThat(Reflection.between(film, film).polarity()).isEqualTo(Polarity.NONE);
  }

  @Test
  void aMediumWithoutDensityIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Medium("film", 1950, Double.NaN))
        .withMessageContaining("above zero");
    assertThatIllegalArgumentException().isThrownBy(() -> new Reflection(Double.NaN));
  }
}
