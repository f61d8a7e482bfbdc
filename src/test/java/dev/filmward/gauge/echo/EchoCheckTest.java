package dev.filmward.gauge.echo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Structure;
import dev.filmward.gauge.Gauge;
import java.util.List;
import org.junit.jupiter.api.Test;

class EchoCheckTest {
  private static final Resin WATER = Resins.builtIn().in("water", Resin.Use.LIQUID);
  private static final Resin AIR = Resins.builtIn().in("air", Resin.Use.BACKING);

  private static Setup at(double mhz) {
    return new Setup(new Gauge("G", mhz, 1), Setup.Coupling.IMMERSION, WATER, AIR);
  }

  private static EchoPlan plan(Structure structure) {
    return EchoCheck.of(structure, at(100));
  }

  /** 25, 4, 5, 4 and 42 um at 1950, 1980, 2700, 1980 and 1950 m/s: 2000 d / v in ns, by hand. */
  @Test
  void timesOfFlightAreThereAndBack() {
    List<ExpectedLayer> layers = plan(FilmOf.yaml(FilmOf.BARRIER)).layers();
    assertThat(layers.stream().map(layer -> layer.gauged().flightNs().orElseThrow()))
        .usingElementComparator((a, b) -> Math.abs(a - b) < 0.05 ? 0 : Double.compare(a, b))
        .containsExactly(25.6, 4.0, 3.7, 4.0, 43.1);
    assertThat(layers.stream().mapToDouble(layer -> layer.gauged().flightNs().orElseThrow()).sum())
        .isCloseTo(80.5, within(0.05));
  }

  @Test
  void aGroupHasTheVelocityThatKeepsItsTime() {
    ExpectedLayer first = plan(FilmOf.reportedAsThree()).layers().get(0);
    assertThat(first.nominalUm()).hasValue(29);
    assertThat(first.gauged().velocityMps().orElseThrow())
        .isCloseTo(29 / (25 / 1950.0 + 4 / 1980.0), within(1e-9));
    assertThat(first.gauged().flightNs().orElseThrow())
        .isCloseTo(2000 * 25 / 1950.0 + 2000 * 4 / 1980.0, within(1e-9));
  }

  @Test
  void intoTheBarrierOutOfItAndBackWallHaveTheirSigns() {
    assertThat(plan(FilmOf.reportedAsThree()).polarities()).isEqualTo("+ - -");
  }

  /** Pressure after two ways through: 1 - R^2 at each boundary before, spelled out. */
  @Test
  void anEchoIsWeakenedByAllThatLiesBeforeIt() {
    double water = 998 * 1483;
    double skin = 920 * 1950;
    double tie = 915 * 1980;
    double barrier = 1180 * 2700;
    double front = (skin - water) / (skin + water);
    double within = (tie - skin) / (tie + skin);
    double into = (barrier - tie) / (barrier + tie);
    double expected = (1 - front * front) * (1 - within * within) * into;
    ExpectedEcho echo = plan(FilmOf.reportedAsThree()).echoes().get(2);
    assertThat(echo.place()).isEqualTo(ExpectedEcho.Place.REPORTED);
    assertThat(echo.strength().orElseThrow()).isCloseTo(expected, within(1e-12));
    assertThat(echo.strengthDb().orElseThrow()).isCloseTo(20 * Math.log10(expected), within(1e-9));
  }

  @Test
  void boundariesTooWeakToSeeAreProposedToBeReportedAsOne() {
    EchoPlan plan = plan(FilmOf.yaml(FilmOf.BARRIER));
    assertThat(plan.hasProposal()).isTrue();
    assertThat(plan.polarities()).isEqualTo("(+) + - (-) -");
    assertThat(plan.proposal())
        .containsExactly(
            List.of("Skin", "Outer tie"), List.of("Barrier"), List.of("Inner tie", "Seal"));
    assertThat(words(plan)).anyMatch(text -> text.contains("report Skin + Outer tie as one"));
    assertThat(plan(FilmOf.reportedAsThree()).hasProposal()).isFalse();
  }

  @Test
  void aBoundaryBelowFiveHundredthsIsWeakAndStays() {
    EchoPlan plan =
        plan(
            FilmOf.yaml(
                """
                structures:
                  - code: PA-EVOH
                    layers:
                      - {name: Outer, role: core, resin: PA6, target: 30 um}
                      - {name: Barrier, role: barrier, resin: EVOH, target: 30 um}
                """));
    assertThat(plan.echoes().get(1).sight()).isEqualTo(ExpectedEcho.Sight.WEAK);
    assertThat(plan.hasProposal()).isFalse();
    assertThat(words(plan)).anyMatch(text -> text.startsWith("|R| is 0.029, weak"));
  }

  @Test
  void aBoundaryThatIsSeenWithinAGroupGivesOneEchoTooMany() {
    EchoPlan plan =
        plan(
            FilmOf.yaml(
                FilmOf.BARRIER + "    reported: [[Skin, Outer tie, Barrier, Inner tie, Seal]]\n"));
    assertThat(words(plan).filter(text -> text.contains("one echo too many"))).hasSize(2);
  }

  @Test
  void valuesOfTheStructureComeBeforeThoseOfTheFamily() {
    LayerSound given =
        plan(FilmOf.layer("target: 40 um, velocity: 1900, density: 0.93"))
            .layers()
            .get(0)
            .members()
            .get(0);
    assertThat(given.velocityMps()).hasValue(1900);
    assertThat(given.densityKgm3()).hasValue(930);
    assertThat(given.velocityOrigin()).isEqualTo(Origin.STRUCTURE);
    LayerSound started = plan(FilmOf.layer("target: 40 um")).layers().get(0).members().get(0);
    assertThat(started.velocityMps()).hasValue(1950);
    assertThat(started.velocityOrigin().words()).isEqualTo("starting value, calibrate");
  }

  @Test
  void aResinThatIsNotKnownIsAskedForAndNothingBehindItIsTold() {
    EchoPlan plan =
        plan(
            FilmOf.yaml(
                """
                structures:
                  - code: NEW
                    layers:
                      - {name: Skin, role: skin, resin: LDPE, target: 30 um}
                      - {name: Novel, role: barrier, resin: PA6-66 100%d, target: 30 um}
                      - {name: Seal, role: seal, resin: LDPE, target: 30 um}
                """));
    assertThat(words(plan))
        .anyMatch(
            text -> text.startsWith("resin \"PA6-66 100%d\" is not known here; give velocity"));
    assertThat(plan.polarities()).isEqualTo("? ? -");
    assertThat(plan.layers().get(1).sound()).isEmpty();
    assertThat(plan.echoes().get(3).reflection()).isPresent();
    assertThat(plan.echoes().get(3).strength()).isEmpty();
  }

  @Test
  void theGreatestThicknessLiesALittleAboveNominalAndTolerance() {
    assertThat(greatest("1.5 mil", "3 mil")).isEmpty();
    assertThat(greatest("2 mil", "3 mil")).isEmpty();
    assertThat(greatest("2 mil, upper: 3.1 mil", "3 mil"))
        .singleElement()
        .satisfies(
            remark -> {
              assertThat(remark.weight()).isEqualTo(Remark.Weight.WRONG);
              assertThat(remark.words())
                  .contains("76.2 um, is below nominal and tolerance, 78.7 um");
            });
    assertThat(greatest("2 mil", "5 mil")).isEmpty();
    assertThat(greatest("2 mil", "5.1 mil"))
        .singleElement()
        .satisfies(
            remark -> {
              assertThat(remark.weight()).isEqualTo(Remark.Weight.LOOK);
              assertThat(remark.words()).contains("Set it to 3 mil (76 um)", "no source");
            });
  }

  private static List<Remark> greatest(String target, String greatest) {
    EchoPlan plan = plan(FilmOf.layer("target: " + target + ", greatest: " + greatest));
    return plan.remarks().stream().filter(r -> r.words().contains("greatest")).toList();
  }

  @Test
  void whereItIsNotSetPracticeIsNamedForEachLayer() {
    EchoPlan plan = plan(FilmOf.yaml(FilmOf.BARRIER));
    assertThat(words(plan))
        .filteredOn(text -> text.contains("greatest"))
        .singleElement()
        .asString()
        .contains("Skin 38 to 50 um, Outer tie 6 to 8 um", "Seal 3 mil", "no source");
  }

  @Test
  void aFrequencyOutsideOfPracticeIsLookedAtWhereSuchLayersAre() {
    assertThat(frequency(10, "2 mil")).isEqualTo(Remark.Weight.LOOK);
    assertThat(frequency(20, "38 um")).isEqualTo(Remark.Weight.NOTE);
    assertThat(frequency(125, "51 um")).isEqualTo(Remark.Weight.NOTE);
    assertThat(frequency(126, "51 um")).isEqualTo(Remark.Weight.LOOK);
    assertThat(frequency(200, "10 um")).isEqualTo(Remark.Weight.NOTE);
  }

  private static Remark.Weight frequency(double mhz, String target) {
    return EchoCheck.of(FilmOf.layer("target: " + target), at(mhz)).remarks().stream()
        .filter(remark -> remark.words().contains("practice uses 20 to 125 MHz"))
        .findFirst()
        .orElseThrow()
        .weight();
  }

  @Test
  void aLayerThinnerThanAnEighthOfTheWaveCannotBeResolved() {
    // 1950 m/s at 20 MHz is a wave of 97.5 um, an eighth of it 12.2 um
    EchoPlan plan = EchoCheck.of(FilmOf.layer("target: 12 um"), at(20));
    assertThat(plan.layers().get(0).sound().orElseThrow().resolution())
        .isEqualTo(Resolution.NOT_RESOLVED);
    assertThat(plan.remarks().get(0).weight()).isEqualTo(Remark.Weight.WRONG);
    assertThat(plan.remarks().get(0).words())
        .contains("cannot be resolved", "Web (12.0 um; from 12.2 um on)");
  }

  @Test
  void waterBehindTheFilmWeakensTheBackWall() {
    Setup wet = new Setup(new Gauge("G", 100, 1), Setup.Coupling.CONTACT, WATER, WATER);
    EchoPlan plan = EchoCheck.of(FilmOf.layer("target: 40 um"), wet);
    assertThat(plan.echoes().get(1).reflection().orElseThrow().coefficient())
        .isCloseTo(-0.096, within(0.001));
    assertThat(words(plan)).anyMatch(text -> text.contains("Keep the far side dry"));
  }

  @Test
  void airIsNoCouplant() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Setup(new Gauge("G", 100, 1), Setup.Coupling.CONTACT, AIR, AIR));
  }

  @Test
  void withoutATargetTimesAreAskedForAndSignsAreTold() {
    EchoPlan plan = plan(FilmOf.layer("lower: 10 um"));
    assertThat(plan.layers().get(0).gauged().flightNs()).isEmpty();
    assertThat(plan.polarities()).isEqualTo("-");
    assertThat(words(plan)).anyMatch(text -> text.contains("it has no target"));
  }

  @Test
  void betweenTwoLimitsTheMiddleIsMeant() {
    EchoPlan plan = plan(FilmOf.layer("lower: 10 um, upper: 14 um"));
    assertThat(plan.layers().get(0).nominalUm()).hasValue(12);
  }

  private static java.util.stream.Stream<String> words(EchoPlan plan) {
    return plan.remarks().stream().map(Remark::words);
  }
}
