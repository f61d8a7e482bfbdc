package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Where the fields of a gauge study stand in a row, as its first line says. Other columns are not
 * read. Indices from 0. Immutable.
 *
 * @param layer -1 where there is none
 * @param reference what the part is known to measure, where the file says so
 */
record StudyColumns(
    Separator separator,
    List<String> headings,
    int part,
    int operator,
    int trial,
    int layer,
    int thickness,
    LengthUnit unit,
    Optional<Reference> reference) {
  static final String EXPECTED =
      "the first line must name the columns part,operator,trial,layer,thickness_um (layer may be"
          + " left out where there is one)";

  private static final int MOST_COLUMNS = 4096;
  private static final int NEEDED = 4;
  private static final Pattern REFERENCE =
      Pattern.compile(
          "reference(?:_(?<tail>.*)|\\s*[\\[(](?<bracket>[^\\[\\]()]*)[\\])])",
          Pattern.CASE_INSENSITIVE);
  private static final List<String> NAMES = List.of("part", "operator", "trial", "layer");

  /** The column of the thickness that is known of a part, and its unit. */
  record Reference(int field, LengthUnit unit) {}

  static StudyColumns of(FirstLine first) throws IOException, FileRefused {
    String line = first.read();
    List<Found> all =
        Stream.of(Separator.values())
            .map(separator -> Found.of(line, separator))
            .sorted(Comparator.comparing(Found::known).reversed())
            .toList();
    Found best = all.get(0);
    if (best.known() == 0) {
      throw first.noHeader(line);
    }
    if (best.headings.size() > MOST_COLUMNS) {
      throw new FileRefused(first.where() + "more than " + MOST_COLUMNS + " columns");
    }
    return best.columns(first.where());
  }

  int count() {
    return headings.size();
  }

  /** The headings under one separator. */
  private record Found(Separator separator, List<String> headings) {

    static Found of(String line, Separator separator) {
      return new Found(separator, HeaderText.split(line, separator));
    }

    long known() {
      return headings.stream()
          .filter(text -> NAMES.contains(text.toLowerCase(Locale.ROOT)) || isThickness(text))
          .count();
    }

    StudyColumns columns(String where) throws FileRefused {
      List<Integer> places = new ArrayList<>();
      for (String name : NAMES) {
        places.add(place(name, where));
      }
      int thickness = thickness(where);
      LengthUnit unit =
          Meaning.of(headings.get(thickness))
              .length()
              .orElseThrow(
                  () ->
                      new FileRefused(
                          where
                              + Words.quoted(headings.get(thickness))
                              + " does not say its unit; write um, \u00b5m, mm, mil or in, as in"
                              + " thickness_um"));
      return new StudyColumns(
          separator,
          headings,
          places.get(0),
          places.get(1),
          places.get(2),
          places.get(NEEDED - 1),
          thickness,
          unit,
          reference(where));
    }

    private int place(String name, String where) throws FileRefused {
      List<Integer> all =
          IntStream.range(0, headings.size())
              .filter(i -> headings.get(i).equalsIgnoreCase(name))
              .boxed()
              .toList();
      if (all.size() > 1) {
        throw twice(name, where);
      }
      if (all.isEmpty() && !name.equals("layer")) {
        throw missing(name, where);
      }
      return all.isEmpty() ? -1 : all.get(0);
    }

    private int thickness(String where) throws FileRefused {
      List<Integer> all =
          IntStream.range(0, headings.size())
              .filter(i -> isThickness(headings.get(i)))
              .boxed()
              .toList();
      if (all.size() > 1) {
        throw twice("thickness", where);
      }
      if (all.isEmpty()) {
        throw missing("thickness_um", where);
      }
      return all.get(0);
    }

    /** A heading such as {@code reference_um}; another one that begins so is not read. */
    private Optional<Reference> reference(String where) throws FileRefused {
      List<Reference> all = new ArrayList<>();
      for (int i = 0; i < headings.size(); i++) {
        int field = i;
        Matcher matcher = REFERENCE.matcher(headings.get(i));
        if (matcher.matches()) {
          String unit =
              matcher.group("tail") == null ? matcher.group("bracket") : matcher.group("tail");
          LengthUnit.parse(unit).ifPresent(known -> all.add(new Reference(field, known)));
        }
      }
      if (all.size() > 1) {
        throw twice("reference", where);
      }
      return all.stream().findFirst();
    }

    private FileRefused missing(String name, String where) {
      Optional<String> nearest = Nearest.to(name, headings);
      return new FileRefused(
          where
              + "the column "
              + Words.quoted(name)
              + " is missing"
              + nearest.map(text -> "; the nearest heading is " + Words.quoted(text)).orElse("")
              + "; "
              + EXPECTED);
    }

    private static FileRefused twice(String name, String where) {
      return new FileRefused(
          where + "two columns are headed " + Words.quoted(name) + "; leave one of them out");
    }

    private static boolean isThickness(String text) {
      return Meaning.of(text) instanceof Meaning.Thickness thickness
          && (thickness.unit().isEmpty() || thickness.length().isPresent());
    }
  }
}
