package dev.filmward.access;

import java.math.BigInteger;
import java.net.URLEncoder;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Locale;
import java.util.OptionalLong;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The key that a person's phone and the server share, and the codes that both work out of it: 6
 * digits, another each 30 s. A code of the step before or after is taken too, for clocks that
 * differ and people who type slowly. Immutable.
 *
 * <p>RFC 6238 (time) over RFC 4226 (HMAC-SHA-1, 160 bits of key, dynamic truncation); the key is
 * shown in base 32 of RFC 4648.
 *
 * @param hex the key in hexadecimal digits
 */
public record OneTimeKey(String hex) {
  private static final int BYTES = 20;
  private static final int BITS_OF_A_LETTER = 5;
  private static final int GROUP = 4;
  private static final String LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

  private static final long STEP_S = 30;
  private static final int STEPS_EACH_WAY = 1;
  private static final int DIGITS = 6;
  private static final int MODULUS = 1_000_000;
  private static final SecureRandom RANDOM = new SecureRandom();

  public OneTimeKey {
    if (HexFormat.of().parseHex(hex).length < BYTES) {
      throw new IllegalArgumentException("a key has 160 bits or more");
    }
  }

  static OneTimeKey random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return new OneTimeKey(HexFormat.of().formatHex(bytes));
  }

  /** The number of the step that a moment lies in. */
  static long stepAt(Instant moment) {
    return Math.floorDiv(moment.getEpochSecond(), STEP_S);
  }

  /** How long a code can be taken at most. */
  static Duration longestLife() {
    return Duration.ofSeconds(STEP_S * (2 * STEPS_EACH_WAY + 1));
  }

  /** The code of a step; RFC 4226, 5.3. */
  String code(long step) {
    byte[] mac = mac(ByteBuffer.allocate(Long.BYTES).putLong(step).array());
    int offset = mac[mac.length - 1] & 0xf;
    int bits = ByteBuffer.wrap(mac).getInt(offset) & 0x7fff_ffff;
    return String.format(Locale.ROOT, "%0" + DIGITS + "d", bits % MODULUS);
  }

  private byte[] mac(byte[] message) {
    try {
      Mac mac = Mac.getInstance("HmacSHA1");
      mac.init(new SecretKeySpec(HexFormat.of().parseHex(hex), "HmacSHA1"));
      return mac.doFinal(message);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every JDK has HmacSHA1", e);
    }
  }

  /** The step near a moment whose code somebody typed; blanks in it do not count. */
  OptionalLong stepOf(String typed, Instant now) {
    String code = typed.replaceAll("\\s", "");
    long middle = stepAt(now);
    for (long step = middle - STEPS_EACH_WAY; step <= middle + STEPS_EACH_WAY; step++) {
      if (code(step).equals(code)) {
        return OptionalLong.of(step);
      }
    }
    return OptionalLong.empty();
  }

  /** The key as it is typed into a phone, in groups of four letters. */
  public String letters() {
    String bits = new BigInteger("1" + hex, 16).toString(2).substring(1);
    StringBuilder text = new StringBuilder();
    for (int from = 0; from < bits.length(); from += BITS_OF_A_LETTER) {
      int letter = Integer.parseInt(bits.substring(from, from + BITS_OF_A_LETTER), 2);
      boolean isNewGroup = from > 0 && from / BITS_OF_A_LETTER % GROUP == 0;
      text.append(isNewGroup ? " " : "").append(LETTERS.charAt(letter));
    }
    return text.toString();
  }

  /** The same as an address that a phone can open. */
  public String address(String name) {
    return "otpauth://totp/Filmward:"
        + URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20")
        + "?secret="
        + letters().replace(" ", "")
        + "&issuer=Filmward&algorithm=SHA1&digits="
        + DIGITS
        + "&period="
        + STEP_S;
  }

  /** Not the key, so that it comes into no log. */
  @Override
  public String toString() {
    return "OneTimeKey";
  }
}
