package dev.filmward.intake;

/**
 * A file that is not read at all, since its first line does not say what the columns are. Nothing
 * of it was delivered. The message says where, what, and what instead.
 */
public final class FileRefused extends Exception {
  private static final long serialVersionUID = 1L;

  public FileRefused(String message) {
    super(message);
  }
}
