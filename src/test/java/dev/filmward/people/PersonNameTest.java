package dev.filmward.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PersonNameTest {
  @ParameterizedTest
  @ValueSource(strings = {"Kim", "Zo\u00eb O'Hara-L\u00fc", "\u738B\u5C0F\u660E", "<b>Kim</b>"})
  void anyNameThatCanBeSeenIsTaken(String name) {
    assertThat(new PersonName("  " + name + " ").text()).isEqualTo(name);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "   ", "Kim\u0000", "Kim\nLee", "\u202EmiK", "K\u200Bim", "\uD800"})
  void aNameWithHiddenCharactersIsRefused(String name) {
    assertThatThrownBy(() -> new PersonName(name)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Filmward", "NOT NAMED", "nobody", " demo data"})
  void nobodyIsCalledLikeTheProgram(String name) {
    assertThatThrownBy(() -> new PersonName(name)).hasMessageContaining("Filmward");
  }

  @Test
  void namesAreTheSameWhateverTheCaseAndTheFormOfTheLetters() {
    assertThat(new PersonName("ZO\u00cb").key()).isEqualTo(PersonName.keyOf(" zoe\u0308 "));
    assertThat(new PersonName("\uFF2Bim").key()).isEqualTo("kim");
  }
}
