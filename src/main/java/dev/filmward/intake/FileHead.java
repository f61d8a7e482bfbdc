package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.io.IOException;
import java.util.function.Consumer;

/** A file whose header has been read; the rest is read once. For one thread. */
public abstract sealed class FileHead permits PlainHead, MappedFileHead {
  FileHead() {}

  /** Whether the file can be read in parts. */
  public abstract boolean isDivisible();

  /** Reads all that follows the header. */
  public abstract FileCount readRest(ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException;

  /** Reads what follows the header row by row. */
  abstract RowRun rows(ReadingSink readings, Consumer<Rejection> rejections) throws IOException;
}
