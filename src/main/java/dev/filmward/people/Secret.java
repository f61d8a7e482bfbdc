package dev.filmward.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;

/**
 * What a browser or a machine shows to be let in. Only its hash is ever kept: of 256 random bits, a
 * plain SHA-256 cannot be guessed back.
 *
 * @param text in letters that need no quoting anywhere
 */
public record Secret(String text) {
  private static final int BYTES = 32;
  private static final int ONE_TIME_LETTERS = 20;
  private static final int RECOVERY_LETTERS = 24;
  private static final int GROUP = 5;
  private static final int RECOVERY_GROUP = 6;

  /** Letters and digits that are not taken for one another when they are read aloud. */
  private static final String CLEAR = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final SecureRandom RANDOM = new SecureRandom();

  /** A new one of 256 random bits. */
  public static Secret random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
  }

  /** A password for one sign-in, to be read from a sheet: 20 letters in groups, 99 random bits. */
  public static String oneTimePassword() {
    return letters(ONE_TIME_LETTERS, GROUP);
  }

  /**
   * What lets somebody in once without the second factor: 24 letters in groups, 118 random bits, so
   * that a plain hash can be kept (OWASP ASVS 4.0, 2.6.2: 112 or more).
   */
  public static String recoveryCode() {
    return letters(RECOVERY_LETTERS, RECOVERY_GROUP);
  }

  /** The hash of a recovery code as somebody typed it; case, blanks and hyphens do not count. */
  public static String recoveryHash(String typed) {
    return new Secret(typed.toLowerCase(Locale.ROOT).replaceAll("[\\s-]", "")).hash();
  }

  private static String letters(int count, int group) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      text.append(i > 0 && i % group == 0 ? "-" : "");
      text.append(CLEAR.charAt(RANDOM.nextInt(CLEAR.length())));
    }
    return text.toString();
  }

  /** SHA-256 in 64 hexadecimal digits. */
  public String hash() {
    try {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }

  /** Not the secret, so that it comes into no log. */
  @Override
  public String toString() {
    return "Secret";
  }
}
