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
  private static final int MOST_COLUMNS = 4096;

  private static final String EXPECTED =
      "the first line must name the columns: taken_at,line,structure,roll,sample,lane, then"
          + " layer,thickness_um (one reading a row) or layer_1_um,layer_2_um and so on"
          + " (a column for each layer)";

  private final FirstLine firstLine;
  private String headerLine = "";

  HeaderReader(String file, ByteBlocks blocks, Text text) {
    this.firstLine = new FirstLine(file, blocks, text, EXPECTED);
  }

  Dialect read(Encoding encoding, Structures structures) throws IOException, FileRefused {
    headerLine = firstLine.read();
    Candidate header = choose(headerLine);
    Columns columns = new Columns(firstLine.where(), header.headings());
    return new Dialect(encoding, header.separator(), columns.layout(), columns.plan(structures));
  }

  /** The line that was read, without its end. */
  String headerLine() {
    return headerLine.stripTrailing();
  }

  private Candidate choose(String line) throws FileRefused {
    List<Candidate> candidates =
        Stream.of(Separator.values())
            .map(separator -> Candidate.of(line, separator))
            .sorted(Comparator.comparing(Candidate::known).reversed())
            .toList();
    Candidate best = candidates.get(0);
    if (best.known() == 0) {
      throw firstLine.noHeader(line);
    }
    refuseMixture(best, candidates.get(1));
    if (best.headings().size() > MOST_COLUMNS) {
      throw new FileRefused(
          firstLine.where()
              + best.headings().size()
              + " columns; at most "
              + MOST_COLUMNS
              + " are read");
    }
    return best;
  }

  private void refuseMixture(Candidate best, Candidate second) throws FileRefused {
    if (second.known() * 2 > best.known() && second.headings().size() > 1) {
      throw new FileRefused(
          firstLine.where()
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
