package dev.filmward.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Hashes that chain entries: each is the SHA-256 of the hash before it, the number, the time in
 * microseconds since 1970 (both as eight bytes, the highest first), and the four texts in UTF-8,
 * each after its length in bytes (four bytes). The first follows 64 zeros.
 *
 * <p>Whoever knows one hash can prove everything before it, for example one that was printed in a
 * report. What such a chain cannot show by itself is that its newest entries were cut off; keep a
 * hash elsewhere, and {@link AuditTable#check(java.util.Optional)} looks for it. Source: S. Haber
 * and W. S. Stornetta, How to time-stamp a digital document, Journal of Cryptology 3 (1991) 99.
 * Immutable.
 */
final class AuditChain {
  static final String BEGINNING = "0".repeat(64);

  private AuditChain() {}

  /** The hash of an entry, in 64 hexadecimal digits. */
  static String hash(String before, long id, AuditEntry entry) {
    MessageDigest digest = sha256();
    digest.update(HexFormat.of().parseHex(before));
    digest.update(ByteBuffer.allocate(16).putLong(id).putLong(Times.toMicros(entry.at())).flip());
    add(digest, entry.by());
    add(digest, entry.action());
    add(digest, entry.subject());
    add(digest, entry.detail());
    return HexFormat.of().formatHex(digest.digest());
  }

  private static void add(MessageDigest digest, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    digest.update(ByteBuffer.allocate(4).putInt(bytes.length).flip());
    digest.update(bytes);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
