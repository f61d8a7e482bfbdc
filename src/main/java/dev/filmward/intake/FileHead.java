package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/** A file whose header has been read; the rest is read once. For one thread. */
public abstract sealed class FileHead permits PlainHead, MappedFileHead {
  FileHead() {}

  /** What a row needs in order to be read by itself; empty where it is longer than is kept. */
  public abstract Optional<KeptHead> kept();

  /** Whether the file can be read in parts. */
  public abstract boolean isDivisible();

  /** Reads all that follows the header. */
  public abstract FileCount readRest(ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException;

  /** Reads what follows the header row by row. */
  abstract RowRun rows(ReadingSink readings, Consumer<Rejection> rejections) throws IOException;
}
