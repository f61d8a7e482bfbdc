package dev.filmward.web;

import io.javalin.http.ContentTooLargeResponse;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Lets a body through up to a limit, and answers 413 to the byte after it. */
final class BoundedStream extends FilterInputStream {
  private final long limit;
  private long count;

  BoundedStream(InputStream in, long limit) {
    super(in);
    this.limit = limit;
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
    count += bytes;
    if (count > limit) {
      throw new ContentTooLargeResponse("a body here may have up to " + limit + " bytes");
    }
  }
}
