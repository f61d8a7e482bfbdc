package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every place for a reading is accounted for. */
class FileCountTest {

  @ParameterizedTest
  @CsvSource({"0, 0, 0, 0", "10, 7, 2, 1", "10, 14, 4, 2", "3, 0, 0, 3", "1, 0, 4096, 0"})
  void placesAreRowsTimesTheColumns(long rows, long readings, long missing, long quarantined) {
    assertThat(new FileCount("f", rows, readings, missing, quarantined, List.of()).rows())
        .isEqualTo(rows);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, 0, 0",
    "10, 7, 2, 0",
    "10, 7, 2, 2",
    "10, 0, 0, 0",
    "-1, 0, 0, 0",
    "1, -1, 2, 0",
    "1, 2, -1, 0",
    "1, 2, 0, -1"
  })
  void countsThatLoseAPlaceCannotBe(long rows, long readings, long missing, long quarantined) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new FileCount("f", rows, readings, missing, quarantined, List.of()));
  }

  @Test
  void aRejectionHasALineAndCostsAReading() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Rejection("f", 0, "", "", "", "", 1))
        .withMessageContaining("lines count from 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Rejection("f", 1, "", "", "", "", 0))
        .withMessageContaining("costs a reading");
  }

  @Test
  void aRejectionOfAWholeRowNamesNoColumn() {
    assertThat(new Rejection("f.csv", 7, "", "", "too short", "x", 3).sentence())
        .isEqualTo("f.csv, line 7: too short");
  }

  @Test
  void aDialectHasAColumnOfThicknesses() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Dialect(Encoding.UTF_8, Separator.COMMA, Layout.LONG, List.of()))
        .withMessage("no column holds a thickness");
  }
}
