package dev.filmward.gauge.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The worked case: a film of 25 / 4 / 5 / 4 / 42 um with velocities 1950 / 1980 / 2700 / 1980 /
 * 1950 m/s. What a gauge exports of it is arithmetic with t = c tau / 2, spelled out beside each
 * row: 25 um are 25.64 ns, 4 um 4.04 ns, 5 um 3.70 ns, 42 um 43.08 ns, together 80.5 ns.
 */
class WorkedCaseTest {
  private static final double NOTHING = Double.NaN;

  private final Screen screen = new Screen(WorkedFilm.structure(), List.of());

  static Stream<Arguments> rows() {
    return Stream.of(
        // 25 + 4 x 1950/1980 = 28.94; 5 x 1980/2700 = 3.67; 4 x 2700/1980 = 5.45; 42 x 1980/1950
        Arguments.of(
            "boundary behind layer 1 missed",
            new double[] {28.9, 3.67, 5.45, 42.6, NOTHING},
            Misread.BOUNDARY_NOT_FOUND,
            List.of(1, 2, 3, 4, 5)),
        // 5 + 4 x 2700/1980 = 10.45
        Arguments.of(
            "boundary behind layer 3 missed",
            new double[] {25.0, 4.0, 10.5, 42.6, NOTHING},
            Misread.BOUNDARY_NOT_FOUND,
            List.of(3, 4, 5)),
        // 2 ns x 1.95/2 = 1.95; 23.64 ns x 1.98/2 = 23.4; 4.04 x 2.7/2 = 5.45; 3.7 x 1.98/2 = 3.67
        Arguments.of(
            "phantom echo of 2 ns in layer 1",
            new double[] {1.95, 23.4, 5.45, 3.67, 3.94},
            Misread.DOUBLE_TRIGGER,
            List.of(1, 2, 3, 4, 5)),
        // 10 um of water at 1483 m/s take 13.5 ns, which is 13.1 um at 1950 m/s
        Arguments.of(
            "10 um of water counted",
            new double[] {38.1, 4.0, 5.0, 4.0, 42.0},
            Misread.COUPLANT,
            List.of(1)),
        Arguments.of(
            "upside down",
            new double[] {42.0, 4.0, 5.0, 4.0, 25.0},
            Misread.UPSIDE_DOWN,
            List.of(1, 2, 3, 4, 5)),
        Arguments.of(
            "last echo lost, blank",
            new double[] {25.0, 4.0, 5.0, 4.0, NOTHING},
            Misread.LOST_ECHO,
            List.of(5)),
        Arguments.of(
            "last echo lost, zero",
            new double[] {25.0, 4.0, 5.0, 4.0, 0},
            Misread.LOST_ECHO,
            List.of(5)),
        Arguments.of(
            "last echo lost, greatest",
            new double[] {25.0, 4.0, 5.0, 4.0, 168},
            Misread.RANGE_END,
            List.of(5)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rows")
  void eachEventOfTheWorkedCaseIsNamedAndNothingElse(
      String event, double[] um, Misread kind, List<Integer> positions) {
    List<Flag> flags = flags(WorkedFilm.oneLane(um));
    assertThat(flags).hasSize(1);
    assertThat(flags.get(0).kind()).isEqualTo(kind);
    assertThat(flags.get(0).positions()).isEqualTo(positions);
    assertThat(flags.get(0).lanes()).containsExactly(1);
    assertThat(flags.get(0).strength()).isEqualTo(Strength.CERTAIN);
  }

  @Test
  void theGoodRowHasNoFlag() {
    assertThat(flags(WorkedFilm.oneLane(25, 4, 5, 4, 42))).isEmpty();
  }

  /**
   * (25.64 + 4.04) ns x 1.95/2 = 28.9 and 45.9: right for a structure that reports three layers.
   */
  @Test
  void mergedLayersThatTheStructureReportsAsOneAreNoMisreading() {
    double skin = (25 + 4) / (25 / 1950.0 + 4 / 1980.0);
    double seal = (4 + 42) / (4 / 1980.0 + 42 / 1950.0);
    Screen three =
        new Screen(
            WorkedFilm.structure(
                "BAG-80", new double[] {29, 5, 46}, new double[] {skin, 2700, seal}),
            List.of());
    assertThat(
            three.flags(
                WorkedFilm.oneLane(28.9, 5.0, 45.9), three.recent(), OptionalDouble.empty()))
        .isEmpty();
  }

  @Test
  void whatAMissedBoundaryExportsIsTheArithmeticOfTimesOfFlight() {
    HeardFilm film = new HeardFilm(WorkedFilm.structure());
    double[] filmNs = Usual.ofTargets(film).nsAt(1);
    assertThat(filmNs[0] + filmNs[1] + filmNs[2] + filmNs[3] + filmNs[4])
        .isCloseTo(80.5, within(0.05));
    double[] exported = new BoundaryLost(5, List.of(1)).exportedNs(filmNs, filmNs);
    double[] um = new double[5];
    for (int i = 0; i < 5; i++) {
      um[i] = film.um(i + 1, exported[i]);
    }
    assertThat(um[0]).isCloseTo(28.9, within(0.05));
    assertThat(um[1]).isCloseTo(3.67, within(0.005));
    assertThat(um[2]).isCloseTo(5.45, within(0.005));
    assertThat(um[3]).isCloseTo(42.6, within(0.05));
    assertThat(um[4]).isNaN();
  }

  private List<Flag> flags(Sample sample) {
    return screen.flags(sample, screen.recent(), OptionalDouble.empty());
  }
}
