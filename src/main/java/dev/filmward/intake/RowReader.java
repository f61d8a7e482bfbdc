package dev.filmward.intake;

import java.io.IOException;

/**
 * Takes the lines after the header, gives rows, one at a time.
 *
 * <p>A row with a field that starts with a quotation mark is split by {@link QuotedRow}; any other
 * by {@link PlainRow}. Blank lines are skipped. A row is at most 1 MiB long: a longer line is given
 * as a row at fault, then skipped to its end. Where a quotation mark is not closed within that
 * length, or only beyond what looks like another row, its line alone is given as a row at fault;
 * the lines that were searched for the closing mark are then read again, each by itself, so that
 * nothing is searched more than twice. One owner, one thread; memory does not grow with the file.
 */
final class RowReader {
  static final int LONGEST = 1024 * 1024;
  static final String CUT_MARK = " [cut here; the row goes on]";
  private static final int RAW_KEPT = 64 * 1024;

  private final ByteBlocks blocks;
  private final Row row;
  private final Text text;
  private final PlainRow plain;
  private final QuotedRow quoted;
  private final byte otherBlank;

  /** Where the line feed of the row that was given last stands; it starts where the blocks are. */
  private int rowEnd;

  private long linesOfRow = 1;
  private boolean left;

  /** Whether its line goes on beyond that. */
  private boolean lineGoesOn;

  /** Up to here in the stream, a quoted field ends with its line at the latest. */
  private long lineByLineUntil;

  RowReader(ByteBlocks blocks, Separator separator, Row row, Text text) {
    this.blocks = blocks;
    this.row = row;
    this.text = text;
    byte sign = (byte) separator.sign();
    this.otherBlank = (byte) (separator == Separator.TAB ? ' ' : '\t');
    this.plain = new PlainRow(sign, otherBlank);
    this.quoted = new QuotedRow(sign, otherBlank);
    this.rowEnd = blocks.from - 1;
  }

  /** Fills the row with the next one; false at the end of the file. */
  boolean next() throws IOException {
    leave();
    left = false;
    if (!skipBlankLines() || blocks.isPast()) {
      left = true;
      return false;
    }
    row.line = blocks.line;
    row.fault = "";
    int end = splitPlain();
    if (end >= 0) {
      finish(end, 1);
    } else if (end == PlainRow.QUOTED) {
      splitQuoted();
    } else {
      giveOverlong();
    }
    return true;
  }

  /** Moves on, so that the blocks stand after the row that was given last. */
  void leave() throws IOException {
    if (!left) {
      leaveRow();
      left = true;
    }
  }

  /** Where in the array of the blocks the row stands, but for a row at fault. */
  int rawStart() {
    return blocks.from;
  }

  long linesOfRow() {
    return linesOfRow;
  }

  /** Up to here in the stream, a quoted field ends with its line at the latest. */
  long lineByLineUntil() {
    return lineByLineUntil;
  }

  void readLineByLineUntil(long offset) {
    lineByLineUntil = offset;
  }

  /** The row as it stands in the file, without its line end; cut after 64 KiB. */
  String raw() {
    int end = rowEnd > blocks.from && blocks.bytes[rowEnd - 1] == '\r' ? rowEnd - 1 : rowEnd;
    int cut = blocks.from + RAW_KEPT;
    if (end <= cut) {
      return text.of(blocks.bytes, blocks.from, end);
    }
    while (cut > blocks.from && (blocks.bytes[cut] & 0xC0) == 0x80) {
      cut--;
    }
    return text.of(blocks.bytes, blocks.from, cut) + CUT_MARK;
  }

  private void finish(int end, long lines) {
    rowEnd = end;
    linesOfRow = lines;
    blocks.line += lines;
  }

  private void more() throws IOException {
    plain.forget();
    blocks.more();
  }

  private void leaveRow() throws IOException {
    int end = rowEnd;
    while (lineGoesOn) {
      end = lineFeedFrom(end);
      lineGoesOn = end == blocks.limit && !blocks.ended;
      if (lineGoesOn) {
        blocks.from = end;
        more();
        end = blocks.from;
      }
    }
    blocks.from = Math.min(end + 1, blocks.limit);
  }

  private int lineFeedFrom(int index) {
    int i = index;
    while (blocks.bytes[i] != '\n') {
      i++;
    }
    return i;
  }

  /** Goes to a line that is not blank. Of spaces in front, more than 1 MiB are not kept. */
  private boolean skipBlankLines() throws IOException {
    int kept = LONGEST;
    while (blocks.bytes[blocks.from] <= ' ' && blocks.bytes[blocks.from] >= 0) {
      if (blocks.isPast()) {
        return false;
      }
      int end = endOfBlank();
      boolean isTooMuch = end - blocks.from > kept;
      if (blocks.bytes[end] != '\n') {
        blocks.from = isTooMuch ? end : blocks.from;
        return true;
      }
      if (end < blocks.limit) {
        blocks.from = end + 1;
        blocks.line++;
        kept = LONGEST;
      } else if (blocks.ended) {
        return false;
      } else {
        blocks.from = isTooMuch ? end : blocks.from;
        kept = isTooMuch ? 0 : kept;
        more();
      }
    }
    return true;
  }

  private int endOfBlank() {
    byte[] bytes = blocks.bytes;
    int i = blocks.from;
    while (bytes[i] == ' ' || bytes[i] == otherBlank) {
      i++;
    }
    return bytes[i] == '\r' && i < blocks.limit && bytes[i + 1] == '\n' ? i + 1 : i;
  }

  private int splitPlain() throws IOException {
    int end = plain.split(blocks, row);
    while (end == PlainRow.RAN_OUT && blocks.limit - blocks.from <= LONGEST) {
      more();
      end = plain.split(blocks, row);
    }
    return end - blocks.from > LONGEST ? PlainRow.RAN_OUT : end;
  }

  private void splitQuoted() throws IOException {
    row.unchanged = 0;
    QuotedRow.Break lineBreak =
        blocks.offset() < lineByLineUntil ? QuotedRow.Break.ENDS_ROW : QuotedRow.Break.IS_TEXT;
    int end = quoted.split(blocks, row, lineBreak);
    while (end == QuotedRow.RAN_OUT && !blocks.ended && blocks.limit - blocks.from <= LONGEST) {
      more();
      end = quoted.split(blocks, row, lineBreak);
    }
    if (end >= 0) {
      finish(end, quoted.lines());
    } else {
      giveUnclosed(
          end == QuotedRow.SWALLOWS_ROWS
              ? "a quotation mark is opened and not closed before what looks like the next row"
              : "a quotation mark is opened and not closed within 1 MiB");
    }
  }

  private void giveUnclosed(String fault) {
    int end = lineFeedFrom(blocks.from);
    if (end - blocks.from > LONGEST || (end == blocks.limit && !blocks.ended)) {
      giveOverlong();
      return;
    }
    lineByLineUntil = blocks.offset() + quoted.searched(blocks);
    row.count = 0;
    row.fault = fault + "; close it, or double it where it is part of the text";
    finish(end, 1);
  }

  private void giveOverlong() {
    plain.forget();
    row.unchanged = 0;
    row.count = 0;
    row.fault = "the row is longer than 1 MiB; no row of readings is";
    lineGoesOn = true;
    finish(blocks.from + LONGEST, 1);
  }
}
