package dev.filmward.web;

import dev.filmward.pipeline.LongWork;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Tells how far a file is read, and reads no further where nobody wants it read any more. */
final class WatchedStream extends FilterInputStream {
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

  private void note(int bytes) {
    work.goOn();
    work.did(bytes);
  }
}
