package dev.filmward.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What was handed over, as it was signed.
 *
 * @param id given by the store; 0 before that
 * @param content JSON, to the letter
 */
public record SignedHandover(long id, ShiftKey key, String content, List<Signature> signatures) {

  /**
   * Which handover.
   *
   * @param line empty for all lines together
   * @param day and name of the shift that ended
   */
  public record ShiftKey(String line, String day, String shift) {}

  /** Which of the two leads. */
  public enum Side {
    OUTGOING,
    INCOMING;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Who signed, and what that person said by it. */
  public record Signature(Side side, String by, String meaning, Instant at) {}

  public SignedHandover {
    signatures = List.copyOf(signatures);
  }

  public Optional<Signature> signature(Side side) {
    return signatures.stream().filter(each -> each.side() == side).findFirst();
  }

  public String digest() {
    return digest(content);
  }

  /** The SHA-256 of a content in UTF-8, in 64 hexadecimal digits. */
  public static String digest(String content) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(content.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
