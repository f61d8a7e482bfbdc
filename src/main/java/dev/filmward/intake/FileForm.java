package dev.filmward.intake;

import java.util.List;
import java.util.Optional;

/**
 * How a mapped file is written. Immutable.
 *
 * @param encoding empty where it is to be found out; a byte order mark counts more than it
 * @param comments how lines begin that are left out
 * @param headings all of them in their order, with single spaces; they tell which files a mapping
 *     is for
 * @param rowsAfterHeader how many lines to leave out below the header, such as one of units
 * @param name the form of the file's name, with its parts in braces
 */
public record FileForm(
    Optional<Encoding> encoding,
    Separator separator,
    DecimalSign decimal,
    Thousands thousands,
    Optional<String> comments,
    List<String> headings,
    int rowsAfterHeader,
    Optional<String> name) {

  private static final int MOST_COLUMNS = 4096;
  private static final int MOST_LEFT_OUT = 20;

  public FileForm {
    headings = List.copyOf(headings);
    if (headings.isEmpty() || headings.size() > MOST_COLUMNS) {
      throw new IllegalArgumentException("a mapping names 1 to " + MOST_COLUMNS + " headings");
    }
    if (thousands.signs().indexOf(decimal.sign()) >= 0) {
      throw new IllegalArgumentException("one sign cannot stand for thousands and for decimals");
    }
    if (!(rowsAfterHeader >= 0 && rowsAfterHeader <= MOST_LEFT_OUT)) {
      throw new IllegalArgumentException("0 to " + MOST_LEFT_OUT + " lines can be left out");
    }
    name.ifPresent(FileNameForm::of);
  }

  /** Whether a line, split into headings, is the header that the mapping is for. */
  boolean isHeader(List<String> cells) {
    return withoutBlankEnd(cells).equals(withoutBlankEnd(headings));
  }

  static List<String> withoutBlankEnd(List<String> cells) {
    int end = cells.size();
    while (end > 0 && cells.get(end - 1).isEmpty()) {
      end--;
    }
    return cells.subList(0, end);
  }
}
