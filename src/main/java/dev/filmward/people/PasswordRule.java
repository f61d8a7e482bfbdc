package dev.filmward.people;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which passwords are taken: 12 to 128 characters of any kind, none that is common, the person's
 * name or one thing over and over. What is in it is nobody's business otherwise.
 *
 * <p>After NIST SP 800-63B (2017), 5.1.1.2, and OWASP ASVS 4.0, 2.1. The common ones are a short
 * list of our own and the most frequent of published ones (found-passwords.txt says which).
 */
public final class PasswordRule {
  public static final int SHORTEST = 12;
  public static final int LONGEST = 128;
  private static final int LEAST_DIFFERENT = 5;

  private static final Set<String> COMMON = common();

  private PasswordRule() {}

  /**
   * The password as it is hashed: composed in one way, so that another keyboard makes it again.
   *
   * @throws IllegalArgumentException saying why it is not taken
   */
  public static String checked(String password, String name) {
    String composed = composed(password);
    int length = composed.codePointCount(0, composed.length());
    if (length < SHORTEST || length > LONGEST) {
      throw new IllegalArgumentException(
          "a password has " + SHORTEST + " to " + LONGEST + " characters; some words in a row do");
    }
    String plain = composed.toLowerCase(Locale.ROOT);
    if (plain.chars().distinct().count() < LEAST_DIFFERENT || isCommon(plain)) {
      throw new IllegalArgumentException(
          "that password is one of the first that somebody would try; take another one");
    }
    if (lettersOf(plain).equals(lettersOf(PersonName.keyOf(name)))) {
      throw new IllegalArgumentException("a password is not the person's name");
    }
    return composed;
  }

  public static String composed(String password) {
    return Normalizer.normalize(password, Normalizer.Form.NFC);
  }

  /** Common as it is, or but for the digits and signs around it. */
  private static boolean isCommon(String plain) {
    return COMMON.contains(plain) || COMMON.contains(lettersOf(plain));
  }

  private static String lettersOf(String plain) {
    return plain.replaceAll("[^\\p{L}]", "");
  }

  private static Set<String> common() {
    return Stream.of("common-passwords.txt", "found-passwords.txt")
        .flatMap(file -> lines(file).stream())
        .filter(line -> !line.startsWith("#"))
        .collect(Collectors.toUnmodifiableSet());
  }

  private static List<String> lines(String file) {
    try (InputStream in = PasswordRule.class.getResourceAsStream(file);
        BufferedReader lines =
            new BufferedReader(
                new InputStreamReader(
                    java.util.Objects.requireNonNull(in), StandardCharsets.UTF_8))) {
      return lines.lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
