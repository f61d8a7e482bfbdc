package dev.filmward.intake;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads where a field comes from; notes what is wrong. One owner, one thread. */
final class SourceReader {
  private static final List<String> KEYS =
      List.of("column", "constant", "preamble", "file", "from", "counted", "values");
  private static final List<String> TIME_KEYS = List.of("pattern", "zone", "twice");

  private final FileForm form;

  SourceReader(FileForm form) {
    this.form = form;
  }

  Optional<Source> read(Entries columns, Field field) {
    Optional<YamlNode> node = columns.node(field.heading());
    if (node.isEmpty()) {
      return Optional.empty();
    }
    if (node.get() instanceof YamlNode.Scalar scalar && scalar.text().equals("?")) {
      columns.fault(
          field.heading(),
          "is not answered yet; name its column, or write {constant: ...} where all rows share it");
      return Optional.empty();
    }
    if (node.get() instanceof YamlNode.Scalar scalar) {
      return columns(columns, field.heading(), List.of(scalar.text()), Map.of());
    }
    return source(entries(columns, field), field);
  }

  /** How times are written. */
  Optional<TimeForm> time(Entries columns) {
    if (!(columns.node(Field.TAKEN_AT.heading()).orElse(null) instanceof YamlNode.Mapping)) {
      return Optional.of(new TimeForm(TimePattern.ISO, Optional.empty(), Twice.EARLIER));
    }
    Entries entries = entries(columns, Field.TAKEN_AT);
    String pattern = entries.text("pattern").orElse(TimePattern.ISO);
    Optional<ZoneId> zone = entries.text("zone").flatMap(name -> zone(entries, name));
    Twice twice = Choice.of(entries, "twice", Twice.class).orElse(Twice.EARLIER);
    try {
      return Optional.of(new TimeForm(pattern, zone, twice));
    } catch (IllegalArgumentException e) {
      entries.fault(
          "pattern", pattern.equals("?") ? "is not answered yet" : String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  static String noColumn(String name, List<String> headings) {
    if (name.isEmpty()) {
      return "is missing; write the heading of a column";
    }
    if (headings.indexOf(name) != headings.lastIndexOf(name)) {
      return Words.quoted(name)
          + " heads several columns; write # and the number of one, such as #"
          + (headings.indexOf(name) + 1);
    }
    return Words.quoted(name)
        + " is not among the headings; "
        + Nearest.to(name, headings)
            .map(near -> "the nearest is " + Words.quoted(near))
            .orElseGet(() -> "they are " + Words.some(headings));
  }

  private static Entries entries(Entries columns, Field field) {
    List<String> keys = new ArrayList<>(KEYS);
    if (field == Field.TAKEN_AT) {
      keys.addAll(TIME_KEYS);
    }
    YamlNode node = columns.node(field.heading()).orElseThrow();
    return Entries.of(node, "columns, " + field.heading(), columns.faults(), keys);
  }

  private Optional<Source> source(Entries entries, Field field) {
    List<String> given =
        KEYS.subList(0, KEYS.size() - 1).stream()
            .filter(key -> entries.node(key).isPresent())
            .toList();
    if (given.size() != 1) {
      entries.fault(
          given.isEmpty() ? "column" : given.get(1),
          given.isEmpty()
              ? "is missing; name a column, a constant, a preamble line or a part of the file name"
              : "a second source; leave one of them out");
      return Optional.empty();
    }
    String key = given.get(0);
    List<String> names = entries.texts(key);
    Map<String, String> values = entries.textsByName("values");
    if (key.equals("column")) {
      return columns(entries, key, names, values);
    }
    return names.isEmpty() || names.get(0).equals("?")
        ? unanswered(entries, key)
        : single(entries, field, key, new Source(kind(key), named(key, names), values));
  }

  private Optional<Source> columns(
      Entries entries, String key, List<String> names, Map<String, String> values) {
    List<String> plain = names.stream().map(HeadText::plain).toList();
    boolean sound = !plain.isEmpty();
    for (String name : plain) {
      if (MappedColumns.index(form.headings(), name).isEmpty()) {
        entries.fault(key, noColumn(name, form.headings()));
        sound = false;
      }
    }
    return sound ? Optional.of(new Source(Source.Kind.COLUMN, plain, values)) : Optional.empty();
  }

  private Optional<Source> single(Entries entries, Field field, String key, Source source) {
    boolean allowed =
        switch (source.kind()) {
          case TAKEN_AT -> field == Field.SAMPLE;
          case COUNTED -> field == Field.LANE;
          case COLUMN, CONSTANT, PREAMBLE, FILE -> true;
        };
    if (!allowed) {
      entries.fault(key, "only a sample comes from taken_at, and only lanes are counted");
    }
    String name = source.names().isEmpty() ? "" : source.names().get(0);
    boolean named =
        form.name().map(FileNameForm::of).filter(f -> f.parts().contains(name)).isPresent();
    if (source.kind() == Source.Kind.FILE && !named) {
      entries.fault(key, "file, name has no part {" + Words.cut(name) + "}");
    }
    return Optional.of(source);
  }

  private static Optional<Source> unanswered(Entries entries, String key) {
    entries.fault(key, "is not answered yet; write what stands there for all rows");
    return Optional.empty();
  }

  private static Source.Kind kind(String key) {
    return switch (key) {
      case "constant" -> Source.Kind.CONSTANT;
      case "preamble" -> Source.Kind.PREAMBLE;
      case "file" -> Source.Kind.FILE;
      case "from" -> Source.Kind.TAKEN_AT;
      default -> Source.Kind.COUNTED;
    };
  }

  private static List<String> named(String key, List<String> names) {
    return key.equals("from") || key.equals("counted") ? List.of() : names;
  }

  private static Optional<ZoneId> zone(Entries entries, String name) {
    try {
      return Optional.of(ZoneId.of(name));
    } catch (DateTimeException e) {
      entries.fault("zone", Words.quoted(name) + " is not a time zone; Europe/Berlin would be one");
      return Optional.empty();
    }
  }
}
