package dev.filmward.gauge.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.gauge.calibration.CheckChart.Basis;
import dev.filmward.gauge.calibration.Scaling.Word;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Single readings of a known film, in time. */
class CheckChartTest {
  private static final Instant FIRST = Instant.parse("2026-11-20T05:00:00Z");
  private static final Word WORD = new Word("Kim", "each shift", FIRST);

  /** Differences of 0.2 um: sigma 0.2 / d2(2), which is 2 / sqrt(pi). */
  @Test
  void fromEightReadingsOnLimitsComeFromTheFirstEight() {
    CheckChart chart =
        CheckChart.of(
            standard(50, 0, OptionalDouble.empty()),
            readings(50.0, 50.2, 50.0, 50.2, 50.0, 50.2, 50.0, 50.2, 57.0));
    double sigma = 0.2 * Math.sqrt(Math.PI) / 2;
    assertThat(chart.basis()).isEqualTo(Basis.FIRST_READINGS);
    assertThat(chart.centreUm().orElseThrow()).isCloseTo(50.1, within(1e-12));
    assertThat(chart.sigmaUm().orElseThrow()).isCloseTo(sigma, within(1e-12));
    assertThat(chart.isBeyond(50.1 + 3 * sigma - 1e-6)).isFalse();
    assertThat(chart.isBeyond(50.1 + 3 * sigma + 1e-6)).isTrue();
    assertThat(chart.isBeyond(50.1 - 3 * sigma - 1e-6)).isTrue();
  }

  /** Stated 0.12 um and a reference of U = 0.32 um with k = 2: sqrt(0.12² + 0.16²) = 0.2. */
  @Test
  void aStatedDeviationGoesTogetherWithTheReferences() {
    CheckChart chart = CheckChart.of(standard(50, 0.32, OptionalDouble.of(0.12)), readings(50.5));
    assertThat(chart.basis()).isEqualTo(Basis.STATED);
    assertThat(chart.centreUm().orElseThrow()).isEqualTo(50);
    assertThat(chart.sigmaUm().orElseThrow()).isCloseTo(0.2, within(1e-12));
  }

  @Test
  void beforeThatTheReferenceAloneOrNothing() {
    CheckChart reference =
        CheckChart.of(standard(50, 0.4, OptionalDouble.empty()), readings(50.5, 50.7));
    assertThat(reference.basis()).isEqualTo(Basis.REFERENCE);
    assertThat(reference.isBeyond(50.61)).isTrue();
    assertThat(reference.isBeyond(50.59)).isFalse();
    CheckChart none = CheckChart.of(standard(50, 0, OptionalDouble.empty()), readings(90));
    assertThat(none.basis()).isEqualTo(Basis.NONE_YET);
    assertThat(none.isBeyond(90)).isFalse();
  }

  /** Mean 50.5 of a film of 50; deviation 0.1, so sqrt(0.01/3 + 0.01) for three readings. */
  @Test
  void biasHasTheUncertaintyOfReadingsAndReference() {
    CheckChart chart =
        CheckChart.of(standard(50, 0.2, OptionalDouble.empty()), readings(50.4, 50.5, 50.6));
    assertThat(chart.bias().um().orElseThrow()).isCloseTo(0.5, within(1e-12));
    assertThat(chart.bias().standardUm().orElseThrow())
        .isCloseTo(Math.sqrt(0.01 / 3 + 0.01), within(1e-12));
    assertThat(chart.bias().isReal()).isTrue();
  }

  /** Biases of 0.1 um at 50 um and 0.3 um at 100 um: 0.2 / 50, uncertainty sqrt(2) u / 50. */
  @Test
  void linearityOfTwoThicknesses() {
    CheckChart.Bias thin = bias(0.1, 0.03);
    CheckChart.Bias thick = bias(0.3, 0.03);
    Linearity line =
        Linearity.of(List.of(new Linearity.At(50, thin), new Linearity.At(100, thick)));
    assertThat(line.slope().orElseThrow()).isCloseTo(0.004, within(1e-12));
    assertThat(line.standardError().orElseThrow())
        .isCloseTo(Math.sqrt(2) * 0.03 / 50, within(1e-12));
    assertThat(line.isReal()).isTrue();
    assertThat(Linearity.of(List.of(new Linearity.At(50, thin))).slope()).isEmpty();
  }

  private static CheckChart.Bias bias(double um, double standardUm) {
    return new CheckChart.Bias(5, OptionalDouble.of(um), OptionalDouble.of(standardUm));
  }

  private static CheckStandard standard(double um, double expandedUm, OptionalDouble sigmaUm) {
    ReferencePiece film = new ReferencePiece("CS-" + um, um, expandedUm, 2, "LDPE", "contact");
    return new CheckStandard(1, "G-1", film, sigmaUm, WORD);
  }

  private static List<CheckReading> readings(double... um) {
    List<CheckReading> readings = new ArrayList<>();
    for (double each : um) {
      Instant at = FIRST.plusSeconds(28_800L * readings.size());
      readings.add(new CheckReading(readings.size() + 1, 1, at, each, "Kim", ""));
    }
    return readings;
  }
}
