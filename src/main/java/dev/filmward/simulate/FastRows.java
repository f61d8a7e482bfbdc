package dev.filmward.simulate;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Writes rows of plain ASCII through a buffer of its own. A row begins with bytes that are the same
 * for many rows; a comma goes before every field after them. One owner; not thread safe.
 */
final class FastRows {
  private static final int LONGEST_FIELD = 16;

  private final OutputStream out;
  private final byte[] buffer = new byte[1 << 16];
  private int size;

  FastRows(OutputStream out) {
    this.out = out;
  }

  void text(String ascii) throws IOException {
    bytes(ascii.getBytes(StandardCharsets.US_ASCII));
  }

  void begin(byte[] start, int lane) throws IOException {
    bytes(start);
    digit(lane);
  }

  /** A field of one digit. */
  void digit(int value) throws IOException {
    reserve(LONGEST_FIELD);
    buffer[size++] = ',';
    buffer[size++] = (byte) ('0' + value);
  }

  /** A field with three decimals; below 100 um. */
  void thickness(int thousandths) throws IOException {
    reserve(LONGEST_FIELD);
    buffer[size++] = ',';
    if (thousandths >= 10_000) {
      buffer[size++] = decimal(thousandths / 10_000);
    }
    buffer[size++] = decimal(thousandths / 1000);
    buffer[size++] = '.';
    buffer[size++] = decimal(thousandths / 100);
    buffer[size++] = decimal(thousandths / 10);
    buffer[size++] = decimal(thousandths);
  }

  void end() throws IOException {
    reserve(1);
    buffer[size++] = '\n';
  }

  void flush() throws IOException {
    out.write(buffer, 0, size);
    size = 0;
    out.flush();
  }

  private static byte decimal(int number) {
    return (byte) ('0' + number % 10);
  }

  private void bytes(byte[] bytes) throws IOException {
    reserve(bytes.length);
    System.arraycopy(bytes, 0, buffer, size, bytes.length);
    size += bytes.length;
  }

  private void reserve(int more) throws IOException {
    if (buffer.length - size < more) {
      out.write(buffer, 0, size);
      size = 0;
    }
  }
}
