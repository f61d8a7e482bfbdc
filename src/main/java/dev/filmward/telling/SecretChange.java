package dev.filmward.telling;

import java.util.Optional;

/** What somebody does to a password that cannot be read. */
public record SecretChange(What what, Optional<Secret> secret) {
  public static final SecretChange KEEP = new SecretChange(What.KEEP, Optional.empty());
  public static final SecretChange FORGET = new SecretChange(What.FORGET, Optional.empty());

  /** Leave it as it is, take it away, or put another one in its place. */
  public enum What {
    KEEP,
    FORGET,
    SET
  }

  public static SecretChange set(Secret secret) {
    return new SecretChange(What.SET, Optional.of(secret));
  }
}
