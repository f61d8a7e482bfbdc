package dev.filmward.gauge.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.gauge.calibration.PieceReadings.Kind;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Known pieces and what the gauge read on them, to velocity and zero offset. */
class CalibrationFitTest {
  private static final Velocity BEFORE = Velocity.of(1950);
  private static final double SCATTER_NS = 0.06;

  /** c = 2000 t / tau by hand: 51 um read as 50 um at 1950 m/s is 1950 * 51 / 50 = 1989 m/s. */
  @Test
  void onePieceGivesTheVelocity() {
    FittedVelocity found = CalibrationFit.of(List.of(thickness(51, 0.5, 49.9, 50.0, 50.1)), BEFORE);
    assertThat(found.velocity().mps()).isCloseTo(1989, within(1e-9));
    assertThat(found.velocity().offsetNs()).isZero();
    assertThat(found.chiSquare()).isEmpty();
  }

  /** (u(c)/c)² = (0.25/51)² + (0.1/sqrt(3)/50)²: the readings' deviation is 0.1 um. */
  @Test
  void onePieceHasTheUncertaintyOfThicknessAndTime() {
    FittedVelocity found = CalibrationFit.of(List.of(thickness(51, 0.5, 49.9, 50.0, 50.1)), BEFORE);
    double relative = Math.hypot(0.25 / 51, 0.1 / Math.sqrt(3) / 50);
    assertThat(found.relative()).isCloseTo(relative, within(1e-12));
  }

  /** The time of flight less a known zero offset: 2000 * 50 / (52 - 2) = 2000 m/s. */
  @Test
  void onePieceTakesTheZeroOffsetOver() {
    FittedVelocity found =
        CalibrationFit.of(List.of(time(50, 0.5, 52, 52, 52)), new Velocity(1950, 2));
    assertThat(found.velocity()).isEqualTo(new Velocity(2000, 2));
  }

  /** numpy 2.4.6: normal equations with weights 1 / (u(tau)² + b² u(t)²), 200 rounds for b. */
  @Test
  void severalPiecesAsByMatrices() {
    FittedVelocity found = CalibrationFit.of(pieces(78.34), BEFORE);
    assertThat(found.velocity().mps()).isCloseTo(1950.0678559134783, within(1e-8));
    assertThat(found.uMps()).isCloseTo(7.112568983071556, within(1e-9));
    assertThat(found.velocity().offsetNs()).isCloseTo(0.3814497827977399, within(1e-9));
    assertThat(found.uOffsetNs()).isCloseTo(0.19701713079390146, within(1e-10));
    assertThat(found.covariance()).isCloseTo(1.2009027405252468, within(1e-8));
    assertThat(found.chiSquare().orElseThrow()).isCloseTo(0.004415968692528977, within(1e-9));
    assertThat(found.degrees()).isEqualTo(2);
    assertThat(doubts(found, pieces(78.34))).noneMatch(words -> words.contains("one line"));
  }

  /** The same with one piece that reads a nanosecond too long: chi-square 9.92, above 5.99. */
  @Test
  void aPieceThatDoesNotFitIsTold() {
    FittedVelocity found = CalibrationFit.of(pieces(79.34), BEFORE);
    assertThat(found.velocity().mps()).isCloseTo(1937.8765199916293, within(1e-7));
    assertThat(found.chiSquare().orElseThrow()).isCloseTo(9.919612785681796, within(1e-7));
    assertThat(CalibrationDoubts.chance(found).orElseThrow())
        .as("exp(-x/2) for two degrees of freedom")
        .isCloseTo(Math.exp(-9.919612785681796 / 2), within(1e-9));
    assertThat(doubts(found, pieces(79.34))).anyMatch(words -> words.contains("one line"));
  }

  /** Where no uncertainty is known, all pieces weigh the same and the misfit gives it. */
  @Test
  void withoutAnyUncertaintyTheLineTellsIt() {
    List<PieceReadings> pieces = List.of(time(20, 0, 21), time(40, 0, 41), time(60, 0, 62));
    FittedVelocity found = CalibrationFit.of(pieces, BEFORE);
    // slope 41/40 ns/um, intercept 1/3 ns; residuals 1/6, -1/3, 1/6: s² = 1/6, Sxx = 800
    assertThat(found.velocity().mps()).isCloseTo(2000 / 1.025, within(1e-9));
    assertThat(found.velocity().offsetNs()).isCloseTo(1 / 3.0, within(1e-12));
    double uSlope = Math.sqrt(1 / 6.0 / 800);
    assertThat(found.uMps()).isCloseTo(2000 / (1.025 * 1.025) * uSlope, within(1e-9));
    assertThat(found.chiSquare()).isEmpty();
  }

  @Test
  void whatLeadsToNoVelocityIsSaid() {
    assertThatThrownBy(() -> CalibrationFit.of(List.of(time(20, 1, 40), time(40, 1, 20)), BEFORE))
        .hasMessageContaining("thicker piece does not read thicker");
    assertThatThrownBy(() -> CalibrationFit.of(List.of(time(20, 1, 21), time(20, 1, 21)), BEFORE))
        .hasMessageContaining("one thickness");
  }

  @Test
  void doubtsNameFewReadingsAnotherResinAndAnUnusualVelocity() {
    List<PieceReadings> pieces =
        List.of(
            new PieceReadings(
                new ReferencePiece("R-1", 50, 0.5, 2, "HDPE", "contact gauge"),
                Kind.TIME,
                List.of(40.0)));
    assertThat(doubts(CalibrationFit.of(pieces, BEFORE), pieces))
        .anyMatch(words -> words.startsWith("Only 1 reading of piece"))
        .anyMatch(words -> words.contains("is of HDPE and the layer of LDPE"))
        .anyMatch(words -> words.contains("2500 m/s is outside what LDPE usually has"));
  }

  private static List<String> doubts(FittedVelocity found, List<PieceReadings> pieces) {
    return CalibrationDoubts.of(found, pieces, "LDPE");
  }

  private static List<PieceReadings> pieces(double thirdNs) {
    return List.of(
        scattered(25, 0.25, 26.02),
        scattered(51, 0.5, 52.69),
        scattered(76, 0.5, thirdNs),
        scattered(102, 0.6, 104.98));
  }

  private static PieceReadings scattered(double um, double expandedUm, double ns) {
    return time(um, expandedUm, ns - SCATTER_NS, ns, ns + SCATTER_NS);
  }

  private static PieceReadings time(double um, double expandedUm, double... ns) {
    return new PieceReadings(piece(um, expandedUm), Kind.TIME, list(ns));
  }

  private static PieceReadings thickness(double um, double expandedUm, double... shownUm) {
    return new PieceReadings(piece(um, expandedUm), Kind.THICKNESS, list(shownUm));
  }

  private static ReferencePiece piece(double um, double expandedUm) {
    return new ReferencePiece("R-" + um, um, expandedUm, 2, "LDPE", "contact gauge");
  }

  private static List<Double> list(double... values) {
    return Arrays.stream(values).boxed().toList();
  }
}
