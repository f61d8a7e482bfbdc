package dev.filmward.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;

/**
 * Reads text in some encoding as UTF-8. What is no text in that encoding becomes U+FFFD. One owner,
 * one thread; closing it closes nothing.
 */
final class TranscodingStream extends InputStream {
  private static final int CHARS = 16 * 1024;

  private final Reader reader;
  private final CharsetEncoder encoder = StandardCharsets.UTF_8.newEncoder();
  private final CharBuffer chars = CharBuffer.allocate(CHARS).flip();
  private final ByteBuffer bytes = ByteBuffer.allocate(CHARS * 4).flip();
  private boolean ended;

  TranscodingStream(InputStream in, Charset charset) {
    this.reader = new InputStreamReader(in, charset);
  }

  @Override
  public int read() throws IOException {
    return ready() ? bytes.get() & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (!ready()) {
      return -1;
    }
    int count = Math.min(length, bytes.remaining());
    bytes.get(into, offset, count);
    return count;
  }

  private boolean ready() throws IOException {
    while (!bytes.hasRemaining() && !ended) {
      chars.compact();
      ended = reader.read(chars) < 0;
      chars.flip();
      bytes.clear();
      encoder.encode(chars, bytes, ended);
      bytes.flip();
    }
    return bytes.hasRemaining();
  }
}
