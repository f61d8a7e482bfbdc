package dev.filmward.intake;

import java.io.IOException;
import java.io.InputStream;

/**
 * Reads a stream in big blocks and keeps in one array what is not used up yet.
 *
 * <p>Unused bytes are {@code bytes[from]} up to before {@code bytes[limit]}, which itself is always
 * a line feed, so that a search for the end of a line needs no other bound. The owner moves {@code
 * from}. A first block with carriage returns and without any line feed is of a file whose lines end
 * with a carriage return; these are then read as line feeds. One owner, one thread.
 */
final class ByteBlocks {
  private static final int BLOCK = 256 * 1024;

  byte[] bytes;
  int from;
  int limit;
  boolean ended;

  /** Up to here there are whole lines only; at the end of the stream, the last one included. */
  int wholeLines;

  /** Number of the line that {@code from} is on; the owner counts. */
  long line = 1;

  private final InputStream in;
  private final boolean carriageReturnsEndLines;

  /** Lines that start here in the stream, or later, are not of this part of the file. */
  private final long stop;

  /** How many bytes of the stream lie before {@code bytes[0]}. */
  private long dropped;

  ByteBlocks(InputStream in) throws IOException {
    this.bytes = newArray();
    this.in = in;
    this.stop = Long.MAX_VALUE;
    fill();
    carriageReturnsEndLines = contains('\r') && !contains('\n');
    endLines(0);
    findWholeLines();
  }

  /**
   * Reads a part of a file whose lines end with line feeds.
   *
   * @param in the file from {@code start} on
   * @param stop where the part ends: its last row starts before that
   * @param array to read into
   */
  ByteBlocks(InputStream in, long start, long stop, byte[] array) throws IOException {
    this.bytes = array;
    this.in = in;
    this.dropped = start;
    this.stop = stop;
    this.carriageReturnsEndLines = false;
    fill();
    findWholeLines();
  }

  /** Moves the unused bytes to the start of the array and reads on until it is full again. */
  void more() throws IOException {
    int unused = limit - from;
    byte[] target = unused > bytes.length / 2 ? new byte[(bytes.length - 1) * 2 + 1] : bytes;
    System.arraycopy(bytes, from, target, 0, unused);
    dropped += from;
    bytes = target;
    from = 0;
    limit = unused;
    fill();
    endLines(unused);
    findWholeLines();
  }

  /** Where in the stream the unused bytes begin. */
  long offset() {
    return dropped + from;
  }

  static byte[] newArray() {
    return new byte[BLOCK + 1];
  }

  /** Moves to the next line, which is then the first one. */
  void skipLine() throws IOException {
    int i = from;
    while (bytes[i] != '\n' || i == limit) {
      if (i == limit) {
        from = limit;
        if (ended) {
          return;
        }
        more();
        i = from;
      } else {
        i++;
      }
    }
    from = i + 1;
  }

  /** Whether what comes next belongs to the part after this one. */
  boolean isPast() {
    return offset() >= stop;
  }

  /** Where in the array the next part begins, or the end of the array. */
  int bound() {
    return (int) Math.min(bytes.length, stop - dropped);
  }

  /** Whether lines end with line feeds, so that they can be found from any place in the file. */
  boolean linesEndWithLineFeeds() {
    return !carriageReturnsEndLines;
  }

  private void fill() throws IOException {
    int room = bytes.length - 1 - limit;
    int count = in.readNBytes(bytes, limit, room);
    limit += count;
    ended = count < room;
    bytes[limit] = '\n';
  }

  private void endLines(int start) {
    for (int i = start; carriageReturnsEndLines && i < limit; i++) {
      bytes[i] = bytes[i] == '\r' ? (byte) '\n' : bytes[i];
    }
  }

  private void findWholeLines() {
    int end = limit;
    while (!ended && end > 0 && bytes[end - 1] != '\n') {
      end--;
    }
    wholeLines = end;
  }

  private boolean contains(char sign) {
    for (int i = 0; i < limit; i++) {
      if (bytes[i] == sign) {
        return true;
      }
    }
    return false;
  }
}
