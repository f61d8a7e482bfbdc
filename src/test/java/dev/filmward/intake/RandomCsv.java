package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A seeded readings file as rows of values, most of them good, that can be written in several ways
 * with the same meaning.
 */
final class RandomCsv {

  /** Which fields are put between quotation marks. */
  enum Quotes {
    WHERE_NEEDED,
    EVERYWHERE,
    ANYWHERE
  }

  private static final List<String> TIMES =
      List.of(
          "2026-11-25T09:30:00Z",
          "2026-11-25T09:30:00+01:00",
          "2026-11-25 09:31",
          "2026-07-01 00:00:00.125",
          "2026-10-25 02:30",
          "2026-03-29 02:30",
          "2026-02-30 09:30",
          "25.11.2026 09:30",
          "");
  private static final List<String> STRUCTURES =
      List.of("LID-60", "BAR-80", "LID-60", "BAR-80", "LID-61", "");
  private static final List<String> NAMES =
      List.of(
          "L1", "Line 2", "Łódź", "a\"b", "x;y", "x,y", "x\ty", "a\nb", "\u0000", "😀", "7", "");
  private static final List<String> LANES =
      List.of("0", "1", "2", "3", "00012", "99999", "-1", "x");
  private static final List<String> LAYERS =
      List.of("1", "2", "3", "Barrier", "Seal", "Outer skin + Tie", "Core µ", "5", "9", "nil", "");
  private static final List<String> CELLS =
      List.of(
          "",
          "-",
          "–",
          "NaN",
          "nan",
          "12.5",
          "12,5",
          "+3",
          "1e1",
          "1.5E-2",
          "0",
          "-1",
          "x",
          "1.234,5",
          "inf",
          "1e400",
          "12345678901234567890",
          "0.1234567890123456789",
          "12.",
          ".5");

  final Separator separator;
  final List<List<String>> rows = new ArrayList<>();
  private final Random random;
  private final Layout layout;

  RandomCsv(long seed, Layout layout) {
    this.random = new Random(seed);
    this.layout = layout;
    this.separator = Separator.values()[random.nextInt(3)];
    rows.add(header());
    List<String> head = head();
    int count = random.nextInt(60);
    for (int i = 0; i < count; i++) {
      head = random.nextInt(3) == 0 ? changed(head) : head;
      rows.add(row(head));
    }
  }

  List<String> header() {
    List<String> fixed = List.of("taken_at", "line", "structure", "roll", "sample", "lane");
    List<String> header = new ArrayList<>(fixed);
    header.addAll(
        layout == Layout.LONG
            ? List.of("layer", "thickness_mil")
            : List.of("layer_1_um", "layer_2_mm", "layer_3_um", "layer_4_um"));
    return header;
  }

  private List<String> head() {
    return List.of(
        TIMES.get(0), pick(NAMES), pick(STRUCTURES), pick(NAMES), pick(NAMES), pick(LANES));
  }

  private List<String> changed(List<String> head) {
    List<String> other = new ArrayList<>(head);
    int field = random.nextInt(6);
    List<List<String>> choices = List.of(TIMES, NAMES, STRUCTURES, NAMES, NAMES, LANES);
    other.set(field, pick(choices.get(field)));
    return other;
  }

  private List<String> row(List<String> head) {
    List<String> row = new ArrayList<>(head);
    if (layout == Layout.LONG) {
      row.set(5, pick(LANES));
      row.add(pick(LAYERS));
    }
    while (row.size() < rows.get(0).size()) {
      row.add(cell());
    }
    if (random.nextInt(25) == 0) {
      row.remove(random.nextInt(row.size()));
    } else if (random.nextInt(25) == 0) {
      row.add(random.nextInt(row.size()), "more");
    }
    return row;
  }

  private String cell() {
    return random.nextInt(3) == 0
        ? pick(CELLS)
        : Double.toString(random.nextInt(1, 100_000) / 1000.0);
  }

  private String pick(List<String> choices) {
    // the first ones more often, so that most rows are good
    int index = Math.min(random.nextInt(choices.size()), random.nextInt(choices.size()));
    return choices.get(index);
  }

  /** Writes the rows with the line ends, blank lines and spaces that another seed gives. */
  String written(Quotes quotes, long seed) {
    Random style = new Random(seed);
    String lineEnd = style.nextBoolean() ? "\n" : "\r\n";
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        text.append(i == 0 ? "" : separator.sign());
        text.append(space(style)).append(field(row.get(i), quotes, style)).append(space(style));
      }
      text.append(lineEnd);
      text.append(style.nextInt(10) == 0 ? space(style) + lineEnd : "");
    }
    return style.nextBoolean() ? text.toString() : text.toString().replaceAll("[\\r\\n]+$", "");
  }

  private String field(String value, Quotes quotes, Random style) {
    boolean needed =
        value.indexOf(separator.sign()) >= 0 || value.indexOf('\n') >= 0 || value.startsWith("\"");
    boolean quoted =
        needed
            || quotes == Quotes.EVERYWHERE
            || (quotes == Quotes.ANYWHERE && style.nextInt(4) == 0);
    return quoted ? "\"" + value.replace("\"", "\"\"") + "\"" : value;
  }

  private String space(Random style) {
    return style.nextInt(20) == 0 ? " " : "";
  }
}
