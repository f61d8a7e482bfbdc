package dev.filmward.intake;

import java.util.Arrays;

/**
 * Splits a row some of whose fields are quoted, into an array of its own.
 *
 * <p>A field is quoted if its first sign, but for spaces, is a quotation mark. Within it,
 * separators and line feeds are text and a doubled quotation mark stands for one (RFC 4180, section
 * 2); what follows the closing mark, but for spaces, is a fault of the row. A quotation mark
 * further inside a field is text. One owner, one thread.
 */
final class QuotedRow {
  /** The row does not end within the blocks and the greatest length of a row. */
  static final int RAN_OUT = -1;

  /** A quoted field runs over a line end and holds as many separators as a row. */
  static final int SWALLOWS_ROWS = -2;

  private static final int NONE = 0;

  /** What a line feed within quotation marks means. */
  enum Break {
    IS_TEXT,
    ENDS_ROW
  }

  private final byte separator;
  private final byte otherBlank;
  private byte[] unquoted = new byte[1024];
  private int used;
  private int lines;

  private byte[] bytes = {};
  private int index;
  private int rowStart;
  private int bound;
  private boolean endIsThere;
  private int separatorsInRow;
  private Break lineBreak = Break.IS_TEXT;

  QuotedRow(byte separator, byte otherBlank) {
    this.separator = separator;
    this.otherBlank = otherBlank;
  }

  /** How many lines the row that was split last spans. */
  int lines() {
    return lines;
  }

  /**
   * Splits the row that starts where the blocks are.
   *
   * @return where its line feed stands, or {@link #RAN_OUT}, or {@link #SWALLOWS_ROWS}
   */
  int split(ByteBlocks blocks, Row row, Break whatLineBreakIs) {
    bytes = blocks.bytes;
    index = blocks.from;
    rowStart = index;
    bound = Math.min(blocks.limit, blocks.from + RowReader.LONGEST + 1);
    lineBreak = whatLineBreakIs;
    endIsThere = blocks.ended && bound == blocks.limit;
    separatorsInRow = row.start.length - 2;
    used = 0;
    lines = 1;
    row.count = 0;
    row.fault = "";
    do {
      int fault = addField(row);
      if (fault != NONE) {
        return fault;
      }
    } while (bytes[index++] == separator && index <= bound);
    row.bytes = unquoted;
    row.from = 0;
    int end = index - 1;
    return end < bound || endIsThere ? end : RAN_OUT;
  }

  /** How far the last search went, from the start of the row. */
  int searched(ByteBlocks blocks) {
    return index - blocks.from;
  }

  /** Leaves the index at the sign that ends the field, or at the bound. */
  private int addField(Row row) {
    skipBlanks();
    int start = used;
    if (index < bound && bytes[index] == '"') {
      index++;
      int fault = copyQuoted(row);
      if (fault != NONE) {
        return fault;
      }
      skipBlanks();
      int closed = used;
      copyPlain();
      if (used > closed) {
        row.fault = "text follows a closing quotation mark; double a mark that is part of the text";
      }
    } else {
      copyPlain();
    }
    addTrimmed(row, start, index - rowStart);
    return NONE;
  }

  private void skipBlanks() {
    while (index < bound && isBlank(bytes[index])) {
      index++;
    }
  }

  private boolean isBlank(byte sign) {
    return sign == ' ' || sign == otherBlank;
  }

  /** Copies up to the closing mark. */
  private int copyQuoted(Row row) {
    int separators = 0;
    int linesBefore = lines;
    for (; index < bound; index++) {
      byte sign = bytes[index];
      if (sign == '"') {
        index++;
        if (bytes[index] != '"') {
          boolean swallows = lines > linesBefore && separators >= separatorsInRow;
          return swallows && (index < bound || endIsThere) ? SWALLOWS_ROWS : NONE;
        }
      } else if (sign == separator) {
        separators++;
      } else if (sign == '\n') {
        if (lineBreak == Break.ENDS_ROW) {
          row.fault = "a quotation mark is opened and not closed on its line";
          return NONE;
        }
        lines++;
      }
      keep(sign);
    }
    return RAN_OUT;
  }

  private void copyPlain() {
    int start = index;
    while (index < bound && bytes[index] != separator && bytes[index] != '\n') {
      index++;
    }
    boolean endsLine = index == bound || bytes[index] == '\n';
    int end = endsLine && index > start && bytes[index - 1] == '\r' ? index - 1 : index;
    for (int i = start; i < end; i++) {
      keep(bytes[i]);
    }
  }

  private void keep(byte sign) {
    if (used == unquoted.length) {
      unquoted = Arrays.copyOf(unquoted, used * 2);
    }
    unquoted[used++] = sign;
  }

  private void addTrimmed(Row row, int from, int separatorAt) {
    int start = from;
    int end = used;
    while (start < end && isBlank(unquoted[start])) {
      start++;
    }
    while (end > start && isBlank(unquoted[end - 1])) {
      end--;
    }
    row.add(start, end, separatorAt);
  }
}
