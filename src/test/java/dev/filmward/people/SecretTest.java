package dev.filmward.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Base64;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SecretTest {
  /** FIPS 180-4, example of SHA-256. */
  @Test
  void theHashIsSha256() {
    assertThat(new Secret("abc").hash())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void aSecretHas256BitsIsNewEachTimeAndIsNotPrinted() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < 1000; i++) {
      Secret secret = Secret.random();
      assertThat(Base64.getUrlDecoder().decode(secret.text())).hasSize(32);
      assertThat(secret).hasToString("Secret");
      assertThat(seen.add(secret.text())).isTrue();
    }
  }

  @Test
  void aOneTimePasswordIsTakenByTheRuleAndHasNoLettersThatLookAlike() {
    for (int i = 0; i < 200; i++) {
      String password = Secret.oneTimePassword();
      assertThat(password).matches("[a-z2-9]{5}(-[a-z2-9]{5}){3}").doesNotContainPattern("[ilo01]");
      assertThat(PasswordRule.checked(password, "Kim")).isEqualTo(password);
    }
  }
}
