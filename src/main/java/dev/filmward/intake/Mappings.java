package dev.filmward.intake;

import java.util.List;
import java.util.stream.Stream;

/**
 * Mappings to read files through. Which one a file is read through is told by its headings alone: a
 * file whose headings are those of a mapping is read through it, any other as one of the formats
 * that need no mapping. Immutable.
 */
public record Mappings(List<Mapping> all) {
  public static final Mappings NONE = new Mappings(List.of());

  private static final int MOST_LINES = 200;

  public Mappings {
    all = List.copyOf(all);
  }

  /** A mapping that fits, and the line that is its header. */
  record Fit(Mapping mapping, int headerIndex) {}

  /**
   * The mappings whose headings a file has; several have the same headings.
   *
   * @throws FileRefused if there are several
   */
  List<Fit> fitting(HeadText text, String fileName) throws FileRefused {
    List<Fit> fits = all.stream().flatMap(mapping -> fit(mapping, text)).toList();
    if (fits.size() > 1) {
      List<String> names = fits.stream().map(fit -> fit.mapping.name()).toList();
      throw new FileRefused(
          fileName
              + ": "
              + Words.count(names.size(), "mapping")
              + " have the headings of this file: "
              + Words.some(names)
              + "; remove all but one, or name one with --mapping");
    }
    return fits;
  }

  /** Whether two mappings are for the same files. */
  public static boolean areForTheSameFiles(Mapping one, Mapping other) {
    return one.form().separator() == other.form().separator()
        && one.form().isHeader(other.form().headings());
  }

  private static Stream<Fit> fit(Mapping mapping, HeadText text) {
    List<HeadText.Line> lines = text.lines();
    for (int i = 0; i < Math.min(lines.size(), MOST_LINES); i++) {
      if (mapping.form().isHeader(lines.get(i).cells(mapping.form().separator()))) {
        return Stream.of(new Fit(mapping, i));
      }
    }
    return Stream.empty();
  }
}
