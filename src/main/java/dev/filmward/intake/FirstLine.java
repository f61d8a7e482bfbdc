package dev.filmward.intake;

import java.io.IOException;

/**
 * Takes the first line of a file that is not blank, and leaves the blocks at the line after. One
 * owner, one thread.
 */
final class FirstLine {
  private static final int LONGEST = 1024 * 1024;

  /** How a ZIP archive starts, and with it a workbook. */
  private static final String ARCHIVE = "PK\u0003\u0004";

  private final String file;
  private final ByteBlocks blocks;
  private final Text text;
  private final String expected;

  /**
   * @param expected what the line should be, for messages
   */
  FirstLine(String file, ByteBlocks blocks, Text text, String expected) {
    this.file = file;
    this.blocks = blocks;
    this.text = text;
    this.expected = expected;
  }

  String read() throws IOException, FileRefused {
    String line = "";
    while (line.isBlank()) {
      int end = endOfLine();
      if (blocks.from == blocks.limit) {
        throw new FileRefused(file + " is empty; " + expected);
      }
      line = text.of(blocks.bytes, blocks.from, end);
      blocks.from = Math.min(end + 1, blocks.limit);
      blocks.line++;
    }
    return line;
  }

  /** Where the line stands that was read last, as messages begin. */
  String where() {
    return file + ", line " + (blocks.line - 1) + ": ";
  }

  /** That a line is no header. */
  FileRefused noHeader(String line) {
    return line.startsWith(ARCHIVE)
        ? new FileRefused(file + " is a spreadsheet workbook or an archive; save the sheet as CSV")
        : new FileRefused(where() + Words.quoted(line.strip()) + " is no header; " + expected);
  }

  private int endOfLine() throws IOException, FileRefused {
    int length = 0;
    for (; ; ) {
      while (blocks.bytes[blocks.from + length] != '\n' && length <= LONGEST) {
        length++;
      }
      if (length > LONGEST) {
        blocks.line++;
        throw new FileRefused(where() + "longer than 1 MiB, so no header; " + expected);
      }
      if (blocks.from + length < blocks.limit || blocks.ended) {
        return blocks.from + length;
      }
      blocks.more();
    }
  }
}
