package dev.filmward.gauge.echo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResinsTest {

  /** Density times velocity, as worked out beside handbook values (from memory), in MRayl. */
  @ParameterizedTest
  @CsvSource({
    "LDPE, 1.79",
    "LLDPE, 1.84",
    "HDPE, 2.32",
    "PP, 2.40",
    "PA6, 3.01",
    "EVOH 32, 3.19",
    "MAH-g-LLDPE, 1.81",
    "MAH-g-EVA, 1.69",
    "PET, 3.45",
    "PS, 2.46",
    "PVC, 3.31"
  })
  void startsWithImpedancesOfTheFamily(String resin, double mrayl) {
    Resin family = Resins.builtIn().named(resin).orElseThrow();
    assertThat(family.medium().impedanceMrayl()).isCloseTo(mrayl, within(0.006));
    assertThat(family.source()).contains("from memory");
  }

  @ParameterizedTest
  @CsvSource({"pa 6", "PA-6", "Pa6", "polyamide 6"})
  void caseSpacesAndHyphensDoNotMatter(String name) {
    assertThat(Resins.builtIn().named(name)).map(Resin::key).contains("pa6");
  }

  @ParameterizedTest
  @CsvSource({"PA6-66", "EVOH 38", "PETG", "water", "recycled"})
  void nothingIsGuessedFromAPartOfAName(String name) {
    assertThat(Resins.builtIn().named(name)).isEmpty();
  }

  @Test
  void velocityOfPolymersFallsWithTemperatureAndThatOfWaterRises() {
    assertThat(Resins.builtIn().named("LDPE").orElseThrow().kelvin().orElseThrow().start())
        .isEqualTo((-10 - 6) / 2.0);
    assertThat(Resins.builtIn().in("water", Resin.Use.LIQUID).kelvin().orElseThrow().start())
        .isPositive();
  }

  @Test
  void aMediumThatIsNotThereIsRefusedWithWhatThereIs() {
    assertThatThrownBy(() -> Resins.builtIn().in("honey", Resin.Use.LIQUID))
        .isInstanceOf(NoSuchElementException.class)
        .hasMessageContaining("water, glycerol");
  }
}
