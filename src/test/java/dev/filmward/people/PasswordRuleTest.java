package dev.filmward.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PasswordRuleTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "nine layers in one film",
        "     gaps     end",
        "kleinbuchstaben",
        "\u5341\u4E8C\u500B\u5B57\u7684\u5BC6\u78BC\u5C31\u5920\u4E86\u5427\u55CE",
        "\uD83C\uDF9E layers film"
      })
  void anyTwelveCharactersWillDo(String password) {
    assertThat(PasswordRule.checked(password, "Kim")).isEqualTo(password);
  }

  @Test
  void lengthIsCountedInCharactersAsPeopleSeeThem() {
    String eleven = "\uD83C\uDF9E".repeat(6) + "abcde";
    assertThatThrownBy(() -> PasswordRule.checked(eleven, "Kim")).hasMessageContaining("12");
    assertThat(PasswordRule.checked(eleven + "f", "Kim")).hasSize(18);
    String words = "so many words ".repeat(9) + "ok";
    assertThat(PasswordRule.checked(words, "Kim")).hasSize(128);
    assertThatThrownBy(() -> PasswordRule.checked(words + "!", "Kim")).hasMessageContaining("128");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "passwordpassword",
        "Password2026!",
        "123456789012",
        "QWERTYUIOP-123",
        "aaaaaaaaaaaaaa",
        "abababababab",
        "Filmward-2026",
        "1q2w3e4r5t6y",
        "chickenwing101",
        "123-butterfly-2024",
        "Manchester!!1"
      })
  void whatSomebodyWouldTryFirstIsRefused(String password) {
    assertThatThrownBy(() -> PasswordRule.checked(password, "Kim"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("first that somebody would try")
        .hasMessageNotContaining(password);
  }

  @Test
  void theOwnNameIsRefused() {
    assertThatThrownBy(() -> PasswordRule.checked("robin.goodyear1", "Robin Goodyear"))
        .hasMessageContaining("name");
  }
}
