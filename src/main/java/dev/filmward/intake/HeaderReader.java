package dev.filmward.intake;

import dev.filmward.film.Structures;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Reads the first line of a file that is not blank, and gives the dialect that it shows.
 *
 * <p>The separator is the one that gives the most headings we know; where another gives more than
 * half as many, neither is taken. Leaves the blocks at the line after. One owner, one thread.
 */
final class HeaderReader {
  private static final int LONGEST = 1024 * 1024;
  private static final int MOST_COLUMNS = 4096;

  /** How a ZIP archive starts, and with it a workbook. */
  private static final String ARCHIVE = "PK\u0003\u0004";

  private static final String EXPECTED =
      "the first line must name the columns: taken_at,line,structure,roll,sample,lane, then"
          + " layer,thickness_um (one reading a row) or layer_1_um,layer_2_um and so on"
          + " (a column for each layer)";

  private final String file;
  private final ByteBlocks blocks;
  private final Text text;
  private String headerLine = "";

  HeaderReader(String file, ByteBlocks blocks, Text text) {
    this.file = file;
    this.blocks = blocks;
    this.text = text;
  }

  Dialect read(Encoding encoding, Structures structures) throws IOException, FileRefused {
    headerLine = firstLine();
    Candidate header = choose(headerLine);
    Columns columns = new Columns(where(), header.headings());
    return new Dialect(encoding, header.separator(), columns.layout(), columns.plan(structures));
  }

  /** The line that was read, without its end. */
  String headerLine() {
    return headerLine.stripTrailing();
  }

  private String where() {
    return file + ", line " + (blocks.line - 1) + ": ";
  }

  private String firstLine() throws IOException, FileRefused {
    String line = "";
    while (line.isBlank()) {
      int end = endOfLine();
      if (blocks.from == blocks.limit) {
        throw new FileRefused(file + " is empty; " + EXPECTED);
      }
      line = text.of(blocks.bytes, blocks.from, end);
      blocks.from = Math.min(end + 1, blocks.limit);
      blocks.line++;
    }
    return line;
  }

  private int endOfLine() throws IOException, FileRefused {
    int length = 0;
    for (; ; ) {
      while (blocks.bytes[blocks.from + length] != '\n' && length <= LONGEST) {
        length++;
      }
      if (length > LONGEST) {
        blocks.line++;
        throw new FileRefused(where() + "longer than 1 MiB, so no header; " + EXPECTED);
      }
      if (blocks.from + length < blocks.limit || blocks.ended) {
        return blocks.from + length;
      }
      blocks.more();
    }
  }

  private Candidate choose(String line) throws FileRefused {
    List<Candidate> candidates =
        Stream.of(Separator.values())
            .map(separator -> Candidate.of(line, separator))
            .sorted(Comparator.comparing(Candidate::known).reversed())
            .toList();
    Candidate best = candidates.get(0);
    if (best.known() == 0) {
      throw noHeader(line);
    }
    refuseMixture(best, candidates.get(1));
    if (best.headings().size() > MOST_COLUMNS) {
      throw new FileRefused(
          where() + best.headings().size() + " columns; at most " + MOST_COLUMNS + " are read");
    }
    return best;
  }

  private FileRefused noHeader(String line) {
    return line.startsWith(ARCHIVE)
        ? new FileRefused(file + " is a spreadsheet workbook or an archive; save the sheet as CSV")
        : new FileRefused(where() + Words.quoted(line.strip()) + " is no header; " + EXPECTED);
  }

  private void refuseMixture(Candidate best, Candidate second) throws FileRefused {
    if (second.known() * 2 > best.known() && second.headings().size() > 1) {
      throw new FileRefused(
          where()
              + best.separator().words()
              + " and "
              + second.separator().words()
              + " both seem to separate the columns; use one of them only");
    }
  }

  private record Candidate(Separator separator, List<Heading> headings, long known) {

    static Candidate of(String line, Separator separator) {
      List<String> texts = HeaderText.split(line, separator);
      List<Heading> headings =
          Stream.iterate(0, i -> i < texts.size(), i -> i + 1)
              .map(i -> Heading.of(i + 1, texts.get(i)))
              .toList();
      return new Candidate(separator, headings, headings.stream().filter(Heading::isKnown).count());
    }
  }
}
