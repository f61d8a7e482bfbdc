package dev.filmward.alarm;

import java.util.Optional;

/** An alarm is with somebody else than the person who hands it on believes. */
public final class OwnerChangedException extends IllegalStateException {
  private static final long serialVersionUID = 1L;

  private final transient Optional<Ownership> now;

  public OwnerChangedException(Optional<Ownership> now) {
    super(now.map(OwnerChangedException::words).orElse("nobody has this alarm now"));
    this.now = now;
  }

  public Optional<Ownership> now() {
    return now;
  }

  private static String words(Ownership now) {
    return now.by().equals(now.owner())
        ? now.owner() + " has taken this alarm"
        : "this alarm is with " + now.owner() + " now, handed on by " + now.by();
  }
}
