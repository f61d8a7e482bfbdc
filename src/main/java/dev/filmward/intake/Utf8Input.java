package dev.filmward.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Takes bytes in one of the {@linkplain Encoding encodings}, gives the same text as UTF-8 without a
 * byte order mark.
 *
 * <p>The encoding is taken from the mark; without one, UTF-16 is known by the zero bytes of its
 * first signs, and what is not UTF-8 within the first 64 KiB is Windows-1252. What looks like UTF-8
 * is passed on as it is, so that a byte which is not may still follow: see {@link Text}. One owner,
 * one thread; does not close the stream it is given.
 */
final class Utf8Input {
  private static final int LOOKED_AT = 64 * 1024;
  private static final int ZEROS_LOOKED_FOR_IN = 64;

  private final Encoding encoding;
  private final InputStream stream;
  private final int markLength;

  private Utf8Input(Encoding encoding, InputStream stream, int markLength) {
    this.encoding = encoding;
    this.stream = stream;
    this.markLength = markLength;
  }

  static Utf8Input open(InputStream in) throws IOException {
    byte[] head = in.readNBytes(LOOKED_AT);
    Encoding encoding = encodingOf(head);
    ByteArrayInputStream first = new ByteArrayInputStream(head);
    first.skipNBytes(markLength(head));
    InputStream whole = new HeadThenRest(first, in);
    return new Utf8Input(
        encoding,
        encoding == Encoding.UTF_8 ? whole : new TranscodingStream(whole, encoding.charset()),
        markLength(head));
  }

  Encoding encoding() {
    return encoding;
  }

  /** How many bytes of a byte order mark are left out at the start. */
  int markLength() {
    return markLength;
  }

  InputStream stream() {
    return stream;
  }

  private static Encoding encodingOf(byte[] head) {
    if (startsWith(head, 0xFF, 0xFE) || zerosOnlyAt(1, head)) {
      return Encoding.UTF_16_LE;
    }
    if (startsWith(head, 0xFE, 0xFF) || zerosOnlyAt(0, head)) {
      return Encoding.UTF_16_BE;
    }
    return isUtf8(head) ? Encoding.UTF_8 : Encoding.WINDOWS_1252;
  }

  private static int markLength(byte[] head) {
    if (startsWith(head, 0xEF, 0xBB, 0xBF)) {
      return 3;
    }
    return startsWith(head, 0xFF, 0xFE) || startsWith(head, 0xFE, 0xFF) ? 2 : 0;
  }

  private static boolean startsWith(byte[] head, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (i >= head.length || (head[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  /** Whether nearly every second byte is zero, counted from an offset, and hardly any other. */
  private static boolean zerosOnlyAt(int offset, byte[] head) {
    int pairs = Math.min(head.length, ZEROS_LOOKED_FOR_IN) / 2;
    int zeros = 0;
    int others = 0;
    for (int pair = 0; pair < pairs; pair++) {
      zeros += head[2 * pair + offset] == 0 ? 1 : 0;
      others += head[2 * pair + 1 - offset] == 0 ? 1 : 0;
    }
    return pairs >= 2 && zeros * 10 >= pairs * 7 && others * 10 <= pairs;
  }

  /** A character that the end of the head cuts in two is no fault. */
  private static boolean isUtf8(byte[] head) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    boolean whole = head.length < LOOKED_AT;
    return !decoder
        .decode(ByteBuffer.wrap(head), CharBuffer.allocate(head.length), whole)
        .isError();
  }

  /** Reads what was looked at, then the rest. */
  private static final class HeadThenRest extends InputStream {
    private final InputStream head;
    private final InputStream rest;

    HeadThenRest(InputStream head, InputStream rest) {
      this.head = head;
      this.rest = rest;
    }

    @Override
    public int read() throws IOException {
      int next = head.read();
      return next >= 0 ? next : rest.read();
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int count = head.read(into, offset, length);
      return count >= 0 ? count : rest.read(into, offset, length);
    }
  }
}
