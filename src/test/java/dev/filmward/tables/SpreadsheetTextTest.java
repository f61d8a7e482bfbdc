package dev.filmward.tables;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadsheetTextTest {
  @ParameterizedTest
  @ValueSource(
      strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uFF1Dcmd|'/c calc'!A1"})
  void whatCouldStartAFormulaIsLedByAnApostrophe(String text) {
    assertThat(SpreadsheetText.of(text)).isEqualTo("'" + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Blown 1", "1 Outer skin", "LID-60", "a=b", "'quoted"})
  void otherTextsStayAsTheyAre(String text) {
    assertThat(SpreadsheetText.of(text)).isEqualTo(text);
  }
}
