package dev.filmward.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PasswordHashTest {
  /** The vector of the reference implementation of Argon2 (test.c), written from memory. */
  private static final String OF_PASSWORD =
      "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";

  @Test
  void theReferenceHashFitsItsPasswordOnly() {
    assertThat(PasswordHash.fits("password", OF_PASSWORD)).isTrue();
    assertThat(PasswordHash.fits("passwore", OF_PASSWORD)).isFalse();
  }

  @Test
  void ourHashesNameTheirParametersAndHaveASaltOfTheirOwn() {
    String one = PasswordHash.of("nine layers in one film");
    String other = PasswordHash.of("nine layers in one film");
    assertThat(one).startsWith("$argon2id$v=19$m=19456,t=2,p=1$").isNotEqualTo(other);
    assertThat(PasswordHash.fits("nine layers in one film", one)).isTrue();
    assertThat(PasswordHash.fits("nine layers in one fil", one)).isFalse();
  }

  @Test
  void aPasswordIsNeverCutAndTypedTheSameOnAnyKeyboard() {
    String longOne = "x".repeat(127);
    String hash = PasswordHash.of(longOne + "y");
    assertThat(PasswordHash.fits(longOne + "z", hash)).isFalse();
    String composed = PasswordHash.of("gr\u00fcne Folie heute");
    assertThat(PasswordHash.fits("gru\u0308ne Folie heute", composed)).isTrue();
  }
}
