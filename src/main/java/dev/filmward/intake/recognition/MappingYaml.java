package dev.filmward.intake.recognition;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import dev.filmward.intake.Field;
import dev.filmward.intake.Thousands;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes a draft as a mapping file, with the reasons as comments. One owner, one thread. */
final class MappingYaml {
  private final StringBuilder yaml = new StringBuilder();
  private final Draft draft;

  private MappingYaml(Draft draft) {
    this.draft = draft;
  }

  static String of(Draft draft, List<Question> questions) {
    MappingYaml writer = new MappingYaml(draft);
    writer.head(questions);
    writer.file();
    writer.columns();
    writer.readings();
    writer.missing();
    return writer.yaml.toString();
  }

  private void head(List<Question> questions) {
    line(
        "# How Filmward reads files with these headings. The reasons stand beside what was chosen.");
    for (Question question : questions) {
      line("# TO ANSWER: " + comment(question.words()));
      question.choices().forEach(c -> line("#   " + comment(c.value() + ": " + c.words())));
    }
    line("mapping: " + text(draft.name()));
  }

  private void file() {
    TableShape shape = draft.shape();
    line("file:");
    line("  encoding: " + word(shape.text().encoding()));
    String known = "the header in " + shape.headerPlace() + " has the most known words under it";
    entry("  separator: " + word(shape.separator()), known);
    entry(
        "  decimal: "
            + draft.numbers().decimal().map(MappingYaml::word).orElse(quoted(Place.UNKNOWN)),
        draft.numbers().reason());
    if (draft.numbers().thousands() != Thousands.NONE) {
      line("  thousands: " + word(draft.numbers().thousands()));
    }
    shape.comment().ifPresent(sign -> line("  comments: " + quoted(sign)));
    line("  headings: " + list(shape.headings()));
    if (shape.unitsRow() > 0) {
      entry("  rows_after_header: " + shape.unitsRow(), "a row of units stands below the header");
    }
    draft.nameForm().ifPresent(form -> line("  name: " + text(form)));
  }

  private void columns() {
    line("columns:");
    for (Map.Entry<Field, Place> entry : draft.places().entrySet()) {
      Place place = entry.getValue();
      String inside = source(place);
      if (entry.getKey() == Field.TAKEN_AT) {
        inside += ", pattern: " + text(draft.time().pattern());
        inside +=
            draft.time().zone().isEmpty()
                ? ""
                : ", zone: " + text(draft.time().zone()) + ", twice: order";
        entry("  taken_at: {" + inside + "}", place.reason() + "; " + draft.time().reason());
      } else {
        entry("  " + entry.getKey().heading() + ": {" + inside + "}", place.reason());
      }
    }
  }

  private static String source(Place place) {
    String names = place.names().size() == 1 ? text(place.names().get(0)) : list(place.names());
    String source =
        switch (place.kind()) {
          case COLUMN -> "column: " + names;
          case CONSTANT -> "constant: " + names;
          case PREAMBLE -> "preamble: " + names;
          case FILE -> "file: " + names;
          case TAKEN_AT -> "from: taken_at";
          case COUNTED -> "counted: rows";
        };
    if (place.values().isEmpty()) {
      return source;
    }
    String values =
        place.values().entrySet().stream()
            .map(entry -> quoted(entry.getKey()) + ": " + text(entry.getValue()))
            .collect(Collectors.joining(", "));
    return source + ", values: {" + values + "}";
  }

  private void readings() {
    line("readings:");
    for (Draft.Value value : draft.values()) {
      String layer = value.layer().map(name -> ", layer: " + text(name)).orElse("");
      String lane = value.lane().isEmpty() ? "" : ", lane: " + value.lane();
      entry(
          "  - {column: "
              + text(value.column())
              + ", unit: "
              + text(value.unit())
              + layer
              + lane
              + "}",
          value.reason());
    }
  }

  private void missing() {
    if (!draft.missing().isEmpty()) {
      entry("missing: " + list(draft.missing()), "these stand where there should be numbers");
    }
  }

  private void entry(String entry, String reason) {
    line(entry + "  # " + comment(reason));
  }

  private void line(String line) {
    yaml.append(line).append('\n');
  }

  private static String list(Collection<String> texts) {
    return texts.stream().map(MappingYaml::quoted).collect(Collectors.joining(", ", "[", "]"));
  }

  /** Plain where that is safe, else quoted. */
  private static String text(String text) {
    boolean isPlain =
        text.matches("[A-Za-z][A-Za-z0-9_./-]*( [A-Za-z0-9][A-Za-z0-9_./-]*)*") && !isWord(text);
    return isPlain || text.matches("[1-9][0-9]{0,3}") ? text : quoted(text);
  }

  /** What YAML takes for something else than a text. */
  private static boolean isWord(String text) {
    return text.toLowerCase(Locale.ROOT).matches("true|false|yes|no|on|off|null|y|n|nan|inf");
  }

  private static String quoted(String text) {
    return "\"" + new String(JsonStringEncoder.getInstance().quoteAsString(text)) + "\"";
  }

  private static String comment(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
