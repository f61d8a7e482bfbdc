package dev.filmward.gauge.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.gauge.echo.FilmOf;
import dev.filmward.gauge.echo.GaugedLayer;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Layers of PE and EVOH with assumed inputs, worked out by hand. */
class LayerModelTest {
  private static final double PE = 1950;
  private static final double EVOH = 2700;

  /** What makes 0.10 um of PE. */
  private static final double ZERO_NS = 0.10 * 2000 / PE;

  private static LayerModel.Conditions shots(int shots) {
    return new LayerModel.Conditions(2, Uncertain.of(0.1), Uncertain.of(ZERO_NS), shots);
  }

  private static Budget pe(double velocityShare) {
    return new LayerModel(
            25, PE, Uncertain.of(velocityShare * PE), -0.004 * PE, LayerModel.Place.FIRST)
        .budget(shots(1), Coverage.TWO);
  }

  /** 0.325, 0.115, 0.0975 and 0.10 um: 0.37 um, so U = 0.74 um, 3.0 % of 25 um. */
  @Test
  void aFirstLayerWithTheVelocityOfItsFamily() {
    Budget budget = pe(0.013);
    assertThat(budget.components().stream().map(Component::contribution))
        .usingElementComparator((a, b) -> Math.abs(a - b) < 0.0006 ? 0 : Double.compare(a, b))
        .containsExactly(0.325, 0.1155, 0.0975, 0.10);
    assertThat(budget.combined()).isCloseTo(0.37, within(0.005));
    assertThat(budget.expanded()).isCloseTo(0.74, within(0.01));
  }

  @Test
  void calibratedOnTheSameResin() {
    assertThat(pe(0.003).combined()).isCloseTo(0.20, within(0.005));
    assertThat(pe(0.003).expanded()).isCloseTo(0.40, within(0.01));
  }

  /** 0.05, 0.01 and 0.135 um: 0.144 um, U = 0.29 um. The zero is in the first layer only. */
  @Test
  void aThinBarrierIsAsUncertainAsItsTiming() {
    Budget barrier = barrier(1);
    assertThat(barrier.components()).hasSize(3);
    assertThat(barrier.combined()).isCloseTo(0.144, within(0.001));
    assertThat(barrier.expanded()).isCloseTo(0.29, within(0.005));
    assertThat(barrier.share(barrier.components().get(2))).isGreaterThan(0.8);
  }

  /** 16 shots make 0.034 um of 0.135 um and leave the rest: U = 0.12 um. */
  @Test
  void moreShotsMakeTheTimingBetterAndNothingElse() {
    assertThat(barrier(16).expanded()).isCloseTo(0.12, within(0.006));
    assertThat(barrier(16).components().get(0)).isEqualTo(barrier(1).components().get(0));
    assertThat(barrier(16).components().get(2).contribution()).isCloseTo(0.135 / 4, within(1e-12));
  }

  private static Budget barrier(int shots) {
    double kelvin = -0.002 * EVOH / (2 / Math.sqrt(3));
    return new LayerModel(5, EVOH, Uncertain.of(0.01 * EVOH), kelvin, LayerModel.Place.FURTHER_IN)
        .budget(shots(shots), Coverage.TWO);
  }

  /** Against derivatives by small steps of t = v(T) (tau - tau0) / 2. */
  @Test
  void sensitivitiesAreTheSlopesOfTheModel() {
    double tau = 26;
    double step = 1e-4;
    List<Component> parts =
        new LayerModel(thickness(PE, tau, 0.36, 0), PE, Uncertain.of(1), -8, LayerModel.Place.FIRST)
            .budget(shots(1), Coverage.TWO)
            .components();
    double[] slopes = {
      thickness(PE + step, tau, 0.36, 0) - thickness(PE - step, tau, 0.36, 0),
      thickness(PE, tau, 0.36, step) - thickness(PE, tau, 0.36, -step),
      thickness(PE, tau + step, 0.36, 0) - thickness(PE, tau - step, 0.36, 0),
      thickness(PE, tau, 0.36 + step, 0) - thickness(PE, tau, 0.36 - step, 0)
    };
    for (int i = 0; i < slopes.length; i++) {
      assertThat(parts.get(i).sensitivity()).isCloseTo(slopes[i] / (2 * step), within(1e-6));
    }
  }

  private static double thickness(double mps, double tauNs, double zeroNs, double kelvin) {
    return (mps - 8 * kelvin) * (tauNs - zeroNs) / 2000;
  }

  @Test
  void aGroupAddsTheErrorsOfItsMembersAsTheyStand() {
    GroupVelocity group =
        GroupVelocity.of(
            List.of(
                new GroupVelocity.Member(25, 1950, 50, -8),
                new GroupVelocity.Member(4, 1980, 40, -8)));
    double both = 29 / (25 / 2000.0 + 4 / 2020.0);
    double none = 29 / (25 / 1950.0 + 4 / 1980.0);
    assertThat(group.velocityMps()).isCloseTo(none, within(1e-9));
    assertThat(group.uncertainty().standard()).isCloseTo(both - none, within(1.5));
    assertThat(group.kelvinMps()).isCloseTo(-8, within(0.01));
  }

  @Test
  void theFamilysRangeIsTakenUntilSomebodyCalibrates() {
    List<GaugedLayer> layers = GaugedLayer.of(FilmOf.layer("target: 25 um"));
    FilmBudget film = new FilmBudget(shots(1), Coverage.TWO);
    LayerBudget family = film.of(layers, List.of()).get(0);
    assertThat(family.basis()).contains("calibrate");
    assertThat(family.budget().orElseThrow().components().get(0).input().standard())
        .isCloseTo((2080 - 1900) / Math.sqrt(12), within(1e-9));
    LayerBudget given = film.of(layers, List.of(OptionalDouble.of(0.3))).get(0);
    assertThat(given.budget().orElseThrow().components().get(0).contribution())
        .isCloseTo(0.075, within(1e-12));
  }

  @Test
  void whatIsNotKnownIsAskedFor() {
    String film =
        """
        structures:
          - code: NEW
            layers:
              - {name: Novel, role: core, resin: PA6-66, target: 30 um, velocity: 2600, density: 1.1}
              - {name: Unclear, role: core, resin: PA6-66, target: 30 um}
        """;
    FilmBudget budget = new FilmBudget(shots(1), Coverage.TWO);
    List<GaugedLayer> layers = GaugedLayer.of(FilmOf.yaml(film));
    List<LayerBudget> unasked = budget.of(layers, List.of());
    assertThat(unasked.get(0).budget()).isEmpty();
    assertThat(unasked.get(0).question()).contains("standard uncertainty of the velocity");
    assertThat(unasked.get(1).question()).contains("velocity is not known");
    LayerBudget given = budget.of(layers, List.of(OptionalDouble.of(1))).get(0);
    assertThat(given.budget()).isPresent();
    assertThat(given.question()).contains("temperature counts for nothing");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                budget.of(
                    layers,
                    List.of(OptionalDouble.of(1), OptionalDouble.of(1), OptionalDouble.of(1))));
  }

  @Test
  void conditionsThatCannotBeAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new LayerModel.Conditions(Double.NaN, Uncertain.of(0), Uncertain.of(0), 1));
    assertThatIllegalArgumentException().isThrownBy(() -> shots(0));
  }
}
