package dev.filmward.store;

/** The database could not do what it was asked; the message says what to do. */
public final class StoreException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StoreException(String message) {
    super(message);
  }

  public StoreException(String message, Throwable cause) {
    super(message, cause);
  }
}
