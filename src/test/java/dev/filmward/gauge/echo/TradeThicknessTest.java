package dev.filmward.gauge.echo;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Length;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the trade speaks of thin layers (common practice, no source). */
class TradeThicknessTest {

  @ParameterizedTest
  @CsvSource({"2 mil, 51", "1.5 mil, 38", "3 mil, 76", "51 um, 51", "0.038 mm, 38"})
  void milAreSpokenOfInWholeMicrometres(String length, long spoken) {
    assertThat(TradeThickness.spokenUm(Length.parse(length).micrometres())).isEqualTo(spoken);
  }

  @ParameterizedTest
  @CsvSource({
    "1.5 mil, true",
    "38 um, true",
    "1.75 mil, true",
    "2 mil, true",
    "51 um, true",
    "1.4 mil, false",
    "37 um, false",
    "2.1 mil, false",
    "52 um, false"
  })
  void aLayerIsOfPracticeByItsSpokenThickness(String length, boolean expected) {
    assertThat(TradeThickness.isOfPractice(Length.parse(length).micrometres())).isEqualTo(expected);
  }
}
