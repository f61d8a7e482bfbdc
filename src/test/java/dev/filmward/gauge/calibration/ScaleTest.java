package dev.filmward.gauge.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A reading at one velocity is another reading at another one. */
class ScaleTest {
  /** 2 mil is spoken of as 51 um, 1.5 mil as 38 um (common practice, no source). */
  @Test
  void afterAVelocityIsFoundOnAKnownFilmEveryReadingRescales() {
    Velocity before = Velocity.of(1950);
    Scale scale = Scale.between(before, Velocity.of(1950 * 51.0 / 49.5));
    assertThat(scale.of(49.5)).isCloseTo(51, within(1e-12));
    assertThat(scale.of(36.9)).isCloseTo(38, within(0.05));
  }

  /** t_new = c_new (tau - tau0_new) / 2, worked out by way of the time of flight. */
  @Test
  void theTimeOfFlightStays() {
    Velocity before = new Velocity(1950, 0.4);
    Velocity after = new Velocity(1989, 1.1);
    double flightNs = 2000 * 25.0 / 1950 + 0.4;
    assertThat(Scale.between(before, after).of(25))
        .isCloseTo(1989 * (flightNs - 1.1) / 2000, within(1e-12));
  }

  @Test
  void theSameVelocityLeavesReadingsToTheBit() {
    assertThat(Scale.between(new Velocity(1987.3, 0.7), new Velocity(1987.3, 0.7)))
        .isEqualTo(Scale.AS_EXPORTED);
  }

  /**
   * 25 um of 1950 m/s on 4 um of 1980 m/s, read as one: 29 / (25/1950 + 4/1980). Halves of one
   * thickness have the harmonic mean.
   */
  @Test
  void layersReportedTogetherHaveTheVelocityOfTheirTimesOfFlight() {
    EffectiveVelocity sum = new EffectiveVelocity();
    sum.add(25, 1950);
    sum.add(4, 1980);
    assertThat(sum.mps()).isCloseTo(29 / (25 / 1950.0 + 4 / 1980.0), within(1e-9));
    EffectiveVelocity halves = new EffectiveVelocity();
    halves.add(10, 2000);
    halves.add(10, 3000);
    assertThat(halves.mps()).isCloseTo(2400, within(1e-9));
  }

  /** Values with equal uncertainties: mean 1960, squares 25 + 25 over 5². */
  @Test
  void velocitiesThatAgreeAreOne() {
    VelocityHistory history = VelocityHistory.of(List.of(found(1955, 5), found(1965, 5)));
    assertThat(history.meanMps().orElseThrow()).isCloseTo(1960, within(1e-9));
    assertThat(history.chiSquare().orElseThrow()).isCloseTo(2, within(1e-9));
    assertThat(history.birge().orElseThrow()).isCloseTo(Math.sqrt(2), within(1e-9));
    assertThat(history.wanders()).isFalse();
  }

  /** numpy 2.4.6 and scipy 1.17.1 (chi2.sf) for the same values. */
  @Test
  void aVelocityThatWandersMoreThanItsUncertaintyIsTold() {
    VelocityHistory history =
        VelocityHistory.of(List.of(found(1951, 5), found(1958, 4), found(1949, 6), found(1972, 5)));
    assertThat(history.meanMps().orElseThrow()).isCloseTo(1958.1761827079933, within(1e-9));
    assertThat(history.uMeanMps().orElseThrow()).isCloseTo(2.423377175166058, within(1e-12));
    assertThat(history.chiSquare().orElseThrow()).isCloseTo(12.044714518760195, within(1e-9));
    assertThat(history.birge().orElseThrow()).isCloseTo(2.003722745188748, within(1e-10));
    assertThat(history.chance().orElseThrow()).isCloseTo(0.007231546538568322, within(1e-12));
    assertThat(history.wanders()).isTrue();
  }

  @Test
  void whatIsNoVelocityIsRefused() {
    assertThatThrownBy(() -> Velocity.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Scale(0, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Scale(1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  private static FittedVelocity found(double mps, double uMps) {
    return new FittedVelocity(Velocity.of(mps), uMps, 0, 0, OptionalDouble.empty(), 0);
  }
}
