package dev.filmward.intake;

import java.io.IOException;
import java.util.Arrays;

/**
 * Takes the lines after the header, gives rows, one at a time.
 *
 * <p>A row with a field that starts with a quotation mark is split by {@link QuotedRow}; any other
 * is split in place, and what it shares with the start of the row before is not searched again.
 * Blank lines are skipped. A row is at most 1 MiB long: a longer line is given as a row at fault,
 * then skipped to its end. Where a quotation mark is not closed within that length, or only beyond
 * what looks like another row, its line alone is given as a row at fault; the lines that were
 * searched for the closing mark are then read again, each by itself, so that nothing is searched
 * more than twice. One owner, one thread; memory does not grow with the file.
 */
final class RowReader {
  static final int LONGEST = 1024 * 1024;
  static final String CUT_MARK = " [cut here; the row goes on]";
  private static final int RAW_KEPT = 64 * 1024;
  private static final int QUOTED = -1;
  private static final int CUT_OFF = -2;

  private final ByteBlocks blocks;
  private final Row row;
  private final Text text;
  private final QuotedRow quoted;
  private final byte separator;
  private final byte otherBlank;

  /** The row that was given last, in the array of the blocks, without its line feed. */
  private int rowStart;

  private int rowEnd;
  private boolean lineGoesOn;

  /** Where the row before starts, if this one may be compared with it; else negative. */
  private int plainBefore = -1;

  /** Up to here in the stream, a quoted field ends with its line at the latest. */
  private long lineByLineUntil;

  RowReader(ByteBlocks blocks, Separator separator, Row row, Text text) {
    this.blocks = blocks;
    this.row = row;
    this.text = text;
    this.separator = (byte) separator.sign();
    this.otherBlank = (byte) (separator == Separator.TAB ? ' ' : '\t');
    this.quoted = new QuotedRow(this.separator, otherBlank);
    this.rowEnd = blocks.from - 1;
  }

  /** Fills the row with the next one; false at the end of the file. */
  boolean next() throws IOException {
    leaveRow();
    if (!skipBlankLines()) {
      return false;
    }
    row.line = blocks.line;
    row.fault = "";
    int end = splitInPlace();
    if (end >= 0) {
      plainBefore = rowStart;
      finish(end, 1);
    } else if (end == QUOTED) {
      splitQuoted();
    } else {
      giveOverlong();
    }
    return true;
  }

  /** The row as it stands in the file, without its line end; cut after 64 KiB. */
  String raw() {
    int end = rowEnd > rowStart && blocks.bytes[rowEnd - 1] == '\r' ? rowEnd - 1 : rowEnd;
    int cut = rowStart + RAW_KEPT;
    if (end <= cut) {
      return text.of(blocks.bytes, rowStart, end);
    }
    while (cut > rowStart && (blocks.bytes[cut] & 0xC0) == 0x80) {
      cut--;
    }
    return text.of(blocks.bytes, rowStart, cut) + CUT_MARK;
  }

  private void finish(int end, long lines) {
    rowEnd = end;
    blocks.line += lines;
  }

  private void more() throws IOException {
    plainBefore = -1;
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

  private boolean skipBlankLines() throws IOException {
    while (blocks.bytes[blocks.from] <= ' ' && blocks.bytes[blocks.from] >= 0) {
      int end = endOfBlank();
      if (blocks.bytes[end] != '\n') {
        return true;
      }
      if (end < blocks.limit) {
        blocks.from = end + 1;
        blocks.line++;
      } else if (blocks.ended) {
        return false;
      } else {
        blocks.from = end - blocks.from > LONGEST ? end : blocks.from;
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

  private int splitInPlace() throws IOException {
    for (; ; ) {
      rowStart = blocks.from;
      row.bytes = blocks.bytes;
      row.from = rowStart;
      row.unchanged = plainBefore < 0 ? 0 : sharedFields();
      row.count = row.unchanged;
      int end = splitFrom(row.count == 0 ? rowStart : rowStart + row.stop[row.count - 1] + 1);
      if (end != CUT_OFF) {
        return end - rowStart > LONGEST ? CUT_OFF : end;
      }
      if (blocks.limit - rowStart > LONGEST) {
        return CUT_OFF;
      }
      more();
    }
  }

  /** How many fields at the start, each with its separator, are those of the row before. */
  private int sharedFields() {
    byte[] bytes = blocks.bytes;
    int length = rowEnd - plainBefore;
    int end = Math.min(blocks.limit, rowStart + length);
    int common = Arrays.mismatch(bytes, plainBefore, rowEnd, bytes, rowStart, end);
    common = common < 0 ? length : common;
    int fields = Math.min(row.unchanged, row.kept());
    while (fields > 0 && row.stop[fields - 1] >= common) {
      fields--;
    }
    while (fields < row.kept() && row.stop[fields] < common) {
      fields++;
    }
    return fields;
  }

  private int splitFrom(int index) {
    byte[] bytes = blocks.bytes;
    int i = index;
    for (; ; ) {
      while (bytes[i] == ' ' || bytes[i] == otherBlank) {
        i++;
      }
      int start = i;
      byte sign = bytes[i];
      if (sign == '"') {
        return QUOTED;
      }
      while (sign != separator && sign != '\n') {
        sign = bytes[++i];
      }
      if (sign == '\n') {
        return endRow(start, i);
      }
      addTrimmed(start, i, i);
      i++;
    }
  }

  private int endRow(int start, int end) {
    if (end == blocks.limit && !blocks.ended) {
      return CUT_OFF;
    }
    addTrimmed(start, end > start && blocks.bytes[end - 1] == '\r' ? end - 1 : end, end);
    return end;
  }

  private void addTrimmed(int start, int end, int stop) {
    byte[] bytes = blocks.bytes;
    int last = end;
    while (last > start && (bytes[last - 1] == ' ' || bytes[last - 1] == otherBlank)) {
      last--;
    }
    row.add(start - rowStart, last - rowStart, stop - rowStart);
  }

  private void splitQuoted() throws IOException {
    row.unchanged = 0;
    plainBefore = -1;
    QuotedRow.Break lineBreak =
        blocks.offset() < lineByLineUntil ? QuotedRow.Break.ENDS_ROW : QuotedRow.Break.IS_TEXT;
    int end = quoted.split(blocks, row, lineBreak);
    while (end == QuotedRow.RAN_OUT && !blocks.ended && blocks.limit - rowStart <= LONGEST) {
      more();
      rowStart = blocks.from;
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
    int end = lineFeedFrom(rowStart);
    if (end - rowStart > LONGEST || (end == blocks.limit && !blocks.ended)) {
      giveOverlong();
      return;
    }
    lineByLineUntil = blocks.offset() + quoted.searched(blocks);
    row.count = 0;
    row.fault = fault + "; close it, or double it where it is part of the text";
    finish(end, 1);
  }

  private void giveOverlong() {
    plainBefore = -1;
    row.unchanged = 0;
    row.count = 0;
    row.fault = "the row is longer than 1 MiB; no row of readings is";
    lineGoesOn = true;
    finish(rowStart + LONGEST, 1);
  }
}
