package dev.filmward.intake.recognition;

import dev.filmward.film.LengthUnit;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.HeadText;
import dev.filmward.intake.HeadText.Line;
import dev.filmward.intake.Separator;
import dev.filmward.intake.Units;
import dev.filmward.intake.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where the table lies in a file: separator, header, a row of units, and the rows as cells.
 * Immutable.
 *
 * @param header index of its line
 * @param headings with blank ones at the end, if there are any
 * @param units of the columns, as a row below the header says them; empty without such a row
 * @param unitsRow how many lines to leave out below the header to leave out that row
 * @param rows the first ones that have as many cells as the header
 * @param comment how some lines begin that are none
 */
record TableShape(
    HeadText text,
    Separator separator,
    int header,
    List<String> headings,
    List<Optional<LengthUnit>> units,
    int unitsRow,
    List<List<String>> rows,
    Optional<String> comment) {

  private static final int LINES_FOR_HEADER = 100;
  private static final int ROWS_FOR_SCORE = 30;
  private static final int MOST_ROWS = 3000;
  private static final Pattern NUMERIC = Pattern.compile("[-+]?[0-9][0-9.,' \u00a0]*");
  private static final Pattern DATE_FORM = Pattern.compile("[dmyhstDMYHST./: -]{2,20}");
  private static final List<String> COMMENTS = List.of("#", "//", "%", "!");

  /** A line taken as the header under a separator, and how much speaks for it. */
  private record Candidate(Separator separator, int line, List<String> cells, double score) {}

  static TableShape of(HeadText text, String fileName, List<Separator> separators, Names names)
      throws FileRefused {
    Candidate best = new Candidate(Separator.COMMA, -1, List.of(), 0);
    for (Separator separator : separators) {
      for (int i = 0; i < Math.min(text.lines().size(), LINES_FOR_HEADER); i++) {
        Candidate candidate = candidate(text, separator, i, names);
        best = candidate.score > best.score ? candidate : best;
      }
    }
    if (best.line < 0) {
      throw new FileRefused(
          fileName
              + ": no line looks like a header; the file needs one that names its columns, such as"
              + " date, roll, lane, layer and thickness");
    }
    return shape(text, best, fileName);
  }

  private static Candidate candidate(HeadText text, Separator separator, int line, Names names) {
    List<String> cells = text.lines().get(line).cells(separator);
    long filled = cells.stream().filter(cell -> !cell.isEmpty()).count();
    long numbers = cells.stream().filter(cell -> NUMERIC.matcher(cell).matches()).count();
    if (filled < 2 || numbers * 2 > filled || startsComment(text.lines().get(line))) {
      return new Candidate(separator, line, cells, 0);
    }
    long known = cells.stream().filter(cell -> !cell.isEmpty() && names.isKnown(cell)).count();
    double alike = alike(text, separator, line, cells.size());
    boolean counts = known >= 2 || alike >= 0.5;
    return new Candidate(
        separator, line, cells, counts ? known * 10 + alike * 8 + 0.01 * filled : 0);
  }

  /** Which part of the lines below have as many cells, and some number among them. */
  private static double alike(HeadText text, Separator separator, int line, int size) {
    int looked = 0;
    int alike = 0;
    for (int i = line + 1; i < text.lines().size() && looked < ROWS_FOR_SCORE; i++) {
      Line below = text.lines().get(i);
      if (!below.isBlank()) {
        List<String> cells = below.cells(separator);
        looked++;
        boolean number = cells.stream().anyMatch(cell -> NUMERIC.matcher(cell).matches());
        alike += number && fits(cells, size) ? 1 : 0;
      }
    }
    return looked == 0 ? 0 : (double) alike / looked;
  }

  private static boolean fits(List<String> cells, int size) {
    return cells.size() == size
        || (cells.size() == size + 1 && cells.get(size).isEmpty())
        || cells.size() == size - 1;
  }

  private static boolean startsComment(Line line) {
    return COMMENTS.stream().anyMatch(line.text().stripLeading()::startsWith);
  }

  private static TableShape shape(HeadText text, Candidate header, String fileName)
      throws FileRefused {
    int first = header.line + 1;
    int unitsRow = unitsRow(text, header);
    List<Optional<LengthUnit>> units = new ArrayList<>();
    if (unitsRow > 0) {
      text.lines().get(header.line + unitsRow).cells(header.separator).stream()
          .map(TableShape::unit)
          .forEach(units::add);
    }
    List<List<String>> rows = new ArrayList<>();
    Optional<String> comment = Optional.empty();
    int others = 0;
    int longer = 0;
    for (int i = first + unitsRow; i < text.lines().size() && rows.size() < MOST_ROWS; i++) {
      Line line = text.lines().get(i);
      List<String> cells = line.cells(header.separator);
      if (startsComment(line)) {
        String start = line.text().stripLeading();
        comment = COMMENTS.stream().filter(start::startsWith).findFirst();
      } else if (fits(cells, header.cells.size())) {
        if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
          rows.add(cells);
        }
      } else if (!line.isBlank()) {
        others++;
        longer += cells.size() > header.cells.size() ? 1 : 0;
      }
    }
    if (header.separator == Separator.COMMA && longer > rows.size() && longer * 10 > others * 8) {
      throw new FileRefused(
          fileName
              + ": most rows have more cells than the header has columns, as if the comma were both"
              + " the decimal sign and the separator; export with semicolons, or with numbers in"
              + " quotation marks");
    }
    return new TableShape(
        text, header.separator, header.line, header.cells, units, unitsRow, rows, comment);
  }

  private static int unitsRow(HeadText text, Candidate header) {
    for (int i = header.line + 1; i < Math.min(text.lines().size(), header.line + 4); i++) {
      if (!text.lines().get(i).isBlank()) {
        List<String> cells = text.lines().get(i).cells(header.separator);
        boolean any = cells.stream().anyMatch(cell -> unit(cell).isPresent());
        boolean only = cells.stream().allMatch(TableShape::isOfUnits);
        return any && only ? i - header.line : 0;
      }
    }
    return 0;
  }

  private static boolean isOfUnits(String cell) {
    return cell.isEmpty()
        || unit(cell).isPresent()
        || cell.matches("\\[?\\s*[-\u2013\u2014]?\\s*\\]?")
        || DATE_FORM.matcher(cell).matches();
  }

  private static Optional<LengthUnit> unit(String cell) {
    return Units.parse(cell.replaceAll("[\\[\\]()]", ""));
  }

  /** The lines above the header. */
  List<Line> above() {
    return text.lines().subList(0, header);
  }

  /** How a mapping calls a column. */
  String columnName(int index) {
    return HeadText.columnName(headings, index);
  }

  /** The cells of a column that have something in them. */
  List<String> cells(int column) {
    return rows.stream()
        .filter(row -> row.size() > column)
        .map(row -> row.get(column))
        .filter(cell -> !cell.isEmpty())
        .toList();
  }

  /** Where the header stands, for messages. */
  String headerPlace() {
    return "line " + text.lines().get(header).number();
  }

  /** The first cells of a column, as a person would check them. */
  String examples(int column) {
    return Words.some(cells(column).stream().distinct().limit(3).toList());
  }
}
