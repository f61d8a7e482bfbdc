package dev.filmward.alarm;

/** Somebody else took an alarm on before. */
public final class AlreadyTakenException extends IllegalStateException {
  private static final long serialVersionUID = 1L;

  private final transient Acknowledgement first;

  AlreadyTakenException(Acknowledgement first) {
    super(first.by() + " has taken this alarm on already");
    this.first = first;
  }

  public Acknowledgement first() {
    return first;
  }
}
