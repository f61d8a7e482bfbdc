package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The name that was most likely meant. */
class NearestTest {
  private static final List<String> KNOWN =
      List.of("density", "target", "lower", "upper", "LID-60");

  @ParameterizedTest
  @CsvSource({
    "densty, density", // one letter left out
    "ddensity, density", // one too many
    "densjty, density", // one replaced
    "dnesity, density", // two exchanged: two replaced
    "DENSITY, density",
    "lid-60, LID-60",
    "LID60, LID-60",
    "loper, lower",
  })
  void aSlipOfTheFingerIsSeen(String word, String meant) {
    assertThat(Nearest.to(word, KNOWN)).contains(meant);
  }

  @ParameterizedTest
  @CsvSource({"''", "x", "resin", "density and more", "dty"})
  void anythingFartherIsNotGuessedAt(String word) {
    assertThat(Nearest.to(word, KNOWN)).isEmpty();
  }

  @Test
  void hugeWordsAndListsTakeNoTime() {
    String huge = "x".repeat(1_000_000);

    assertThat(Nearest.to(huge, List.of(huge))).isEmpty();
    assertThat(Nearest.to("x", Collections.nCopies(10_000_000, huge))).isEmpty();
  }

  @Test
  void aValueInAMessageIsCutBetweenSigns() {
    assertThat(Words.quoted("😀".repeat(300))).isEqualTo("\"" + "😀".repeat(100) + "…\"");
    assertThat(Words.quoted("x" + "😀".repeat(300))).isEqualTo("\"x" + "😀".repeat(99) + "…\"");
    assertThat(Words.quoted("x".repeat(200))).isEqualTo("\"" + "x".repeat(200) + "\"");
  }

  @Test
  void ofALongListOfNamesSomeAreGiven() {
    assertThat(Words.some(Collections.nCopies(15, "a"))).endsWith("\"a\" and 3 more");
    assertThat(Words.some(List.of("a", "b"))).isEqualTo("\"a\", \"b\"");
  }
}
