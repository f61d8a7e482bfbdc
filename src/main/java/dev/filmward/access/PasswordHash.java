package dev.filmward.access;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import dev.filmward.people.PasswordRule;
import dev.filmward.people.Secret;
import java.util.concurrent.Semaphore;

/**
 * Hashes passwords with Argon2id in 19 MiB, two passes, one lane (OWASP Password Storage Cheat
 * Sheet; RFC 9106). A few at a time, so that many sign-ins at once do not fill the memory.
 * Thread-safe.
 */
final class PasswordHash {
  private static final int MEMORY_KIB = 19_456;
  private static final int PASSES = 2;
  private static final int LANES = 1;
  private static final int BYTES = 32;
  private static final int SALT_BYTES = 16;
  private static final int AT_ONCE = 4;

  private static final Argon2Function FUNCTION =
      Argon2Function.getInstance(MEMORY_KIB, PASSES, LANES, BYTES, Argon2.ID);
  private static final Semaphore PLACES = new Semaphore(AT_ONCE, true);

  private PasswordHash() {}

  /** The hash of a password, with its salt and parameters. */
  static String of(String password) {
    return atMostAFew(
        () -> Password.hash(password).addRandomSalt(SALT_BYTES).with(FUNCTION).getResult());
  }

  /** The hash of a password that nobody knows. */
  static String ofNothing() {
    return of(Secret.random().text());
  }

  static boolean fits(String password, String hash) {
    String composed = PasswordRule.composed(password);
    return atMostAFew(
        () -> Password.check(composed, hash).with(Argon2Function.getInstanceFromHash(hash)));
  }

  private static <T> T atMostAFew(java.util.function.Supplier<T> work) {
    PLACES.acquireUninterruptibly();
    try {
      return work.get();
    } finally {
      PLACES.release();
    }
  }
}
