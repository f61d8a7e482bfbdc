package dev.filmward.gauge.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.film.SpecLimits;
import org.junit.jupiter.api.Test;

/** What is no balanced study says where, what, and what instead. */
class StudyRefusalsTest {

  @Test
  void aCellThatIsShortIsNamed() {
    String said = Readings.refusal(Readings.of(new double[][][] {{{1, 2}, {2, 3}}, {{4, 5}, {5}}}));
    assertThat(said)
        .contains("part \"P1\"")
        .contains("operator \"O1\"")
        .contains("1 trial")
        .contains("others have 2");
  }

  @Test
  void aPartThatAnOperatorLeftOutIsNamed() {
    StudyReadings readings = Readings.of(new double[][][] {{{1, 2}, {2, 3}}, {{4, 5}}});
    assertThat(Readings.refusal(readings)).contains("\"P1\" by operator \"O1\" was not measured");
  }

  @Test
  void aTrialThatComesTwiceIsNamedAndNotOverwritten() {
    StudyReadings readings = Readings.of(new double[][][] {{{1, 2}}, {{3, 4}}});
    readings.add(new StudyReading("P0", "O0", "1", "1", 2.5));
    assertThat(Readings.refusal(readings)).contains("\"P0\"").contains("trial \"1\" twice");
  }

  @Test
  void onePartOneTrialAndReadingsThatNeverDifferAreRefusedWithWhatInstead() {
    assertThat(Readings.refusal(Readings.of(new double[][][] {{{1, 2}, {2, 3}}})))
        .contains("one part only")
        .contains("at least two");
    assertThat(Readings.refusal(Readings.of(new double[][][] {{{1}, {2}}, {{3}, {4}}})))
        .contains("once by each operator")
        .contains("at least twice");
    assertThat(Readings.refusal(Readings.of(new double[][][] {{{1, 1}, {2, 2}}, {{3, 3}, {4, 4}}})))
        .contains("never differ")
        .contains("more digits");
  }

  @Test
  void manyFaultsAreCutShort() {
    double[][][] um = new double[40][2][];
    for (int part = 0; part < um.length; part++) {
      um[part] = new double[][] {{part, part + 1}, {part}};
    }
    assertThat(Readings.refusal(Readings.of(um)).lines())
        .hasSize(13)
        .last()
        .asString()
        .contains("28 more");
  }

  @Test
  void aFaultyLayerLeavesTheOthersAlone() {
    StudyReadings readings = Readings.of(new double[][][] {{{1, 2}, {2, 3}}, {{4, 5}, {5, 7}}});
    readings.add(new StudyReading("P0", "O0", "1", "2", 2.5));
    assertThat(LayerOutcome.of(readings, layer -> SpecLimits.NONE))
        .hasExactlyElementsOfTypes(LayerOutcome.Studied.class, LayerOutcome.Refused.class);
  }

  @Test
  void aReadingThatIsNoNumberOrHasNoNameIsAFaultOfTheProgram() {
    assertThatThrownBy(() -> new StudyReading("1", "A", "1", "1", Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new StudyReading(" ", "A", "1", "1", 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
