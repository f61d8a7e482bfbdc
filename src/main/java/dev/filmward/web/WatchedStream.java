package dev.filmward.web;

import dev.filmward.pipeline.LongWork;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Tells how far a file is read, and ends with a fault where nobody wants it read any more. */
final class WatchedStream extends FilterInputStream {
  static final String CANCELLED =
      "it was cancelled; readings that were stored before stay, and the file may come again";

  private final LongWork work;

  WatchedStream(InputStream in, LongWork work) {
    super(in);
    this.work = work;
  }

  @Override
  public int read() throws IOException {
    int value = super.read();
    note(value < 0 ? 0 : 1);
    return value;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int read = super.read(buffer, offset, length);
    note(Math.max(0, read));
    return read;
  }

  private void note(int bytes) throws IOException {
    if (work.isCancelled()) {
      throw new IOException(CANCELLED);
    }
    work.did(bytes);
  }
}
