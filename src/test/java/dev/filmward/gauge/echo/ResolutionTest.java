package dev.filmward.gauge.echo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.gauge.Gauge;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResolutionTest {

  /** c / (2 B) in um for c = 1950 m/s (PE) and 2650 m/s (PA), worked out by hand. */
  @ParameterizedTest
  @CsvSource({
    "20, 1, 1950, 49", "20, 0.6, 1950, 81", "50, 1, 1950, 20", "50, 0.6, 1950, 33",
    "50, 1, 2650, 27", "50, 0.6, 2650, 44", "100, 1, 1950, 10", "100, 0.6, 1950, 16",
    "100, 1, 2650, 13", "100, 0.6, 2650, 22", "200, 1, 1950, 5", "200, 0.6, 1950, 8",
    "200, 1, 2650, 7", "200, 0.6, 2650, 11"
  })
  void pulseIsAsLongAsOneOverItsBandwidth(double mhz, double bandwidth, double mps, double um) {
    Resolution.Limits limits = Resolution.Limits.of(mps, new Gauge("G", mhz, bandwidth));
    assertThat(limits.pulseUm())
        .isCloseTo(mps / (2 * bandwidth * mhz), within(1e-12))
        .isCloseTo(um, within(0.51));
  }

  @Test
  void cyclesAreCountedThereAndBack() {
    // 2000 m/s at 50 MHz is a wave of 40 um, so one cycle there and back is 20 um, 1.5 cycles 30 um
    Resolution.Limits limits = Resolution.Limits.of(2000, new Gauge("G", 50, 1));
    assertThat(limits.oneCycleUm()).isEqualTo(20);
    assertThat(limits.cyclesUm()).isEqualTo(30);
    assertThat(limits.leastUm()).isEqualTo(5);
    assertThat(limits.resolvedFromUm()).isEqualTo(30);
  }

  /** The pulse of 60 % bandwidth is longer than 1.5 cycles: 40 / (2 x 0.6) = 33.3 um. */
  @ParameterizedTest
  @CsvSource({"33.4, RESOLVED", "33.3, FITTED", "5, FITTED", "4.99, NOT_RESOLVED"})
  void thicknessDecidesBetweenThreeWords(double um, Resolution expected) {
    assertThat(Resolution.Limits.of(2000, new Gauge("G", 50, 0.6)).of(um)).isEqualTo(expected);
  }
}
