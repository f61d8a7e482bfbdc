package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.function.Consumer;

/** A file that is read through a mapping, in one go. */
final class MappedFileHead extends FileHead {
  private final MappedOpening opening;
  private final InputStream rest;

  /**
   * @param rest what follows the beginning that was looked at
   */
  MappedFileHead(MappedOpening opening, InputStream rest) {
    this.opening = opening;
    this.rest = rest;
  }

  @Override
  public Optional<KeptHead> kept() {
    return opening.kept();
  }

  @Override
  public boolean isDivisible() {
    return false;
  }

  @Override
  public FileCount readRest(ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException {
    RowRun run = rows(readings, rejections);
    while (run.next()) {
      run.take();
    }
    return run.count();
  }

  @Override
  RowRun rows(ReadingSink readings, Consumer<Rejection> rejections) throws IOException {
    return opening.open(rest, readings, rejections);
  }
}
