package dev.filmward.intake;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Reads a mapping from its node; notes what is wrong. One owner, one thread. */
final class MappingReader {
  private static final List<String> KEYS =
      List.of("mapping", "file", "columns", "readings", "missing");
  private static final List<String> FILE_KEYS =
      List.of(
          "encoding",
          "separator",
          "decimal",
          "thousands",
          "comments",
          "headings",
          "rows_after_header",
          "name");
  private static final List<Field> FIELDS =
      List.of(
          Field.TAKEN_AT,
          Field.LINE,
          Field.STRUCTURE,
          Field.ROLL,
          Field.SAMPLE,
          Field.LANE,
          Field.LAYER);

  /** Read where a mapping names it. */
  private static final List<Field> OPTIONAL = List.of(Field.TEMPERATURE_C);

  private final Faults faults;
  private final String yaml;

  MappingReader(Faults faults, String yaml) {
    this.faults = faults;
    this.yaml = yaml;
  }

  /** Of no use where a fault was noted; empty where too little is there. */
  Optional<Mapping> read(YamlNode document, String fileName) {
    Entries entries = Entries.of(document, "mapping", faults, KEYS);
    Optional<FileForm> form = form(entries);
    if (form.isEmpty()) {
      return Optional.empty();
    }
    ReadingsReader readings = new ReadingsReader(entries, form.get().headings());
    List<ValueColumn> values = readings.read();
    SourceReader sources = new SourceReader(form.get());
    Map<Field, Source> fields = new EnumMap<>(Field.class);
    Optional<TimeForm> time = Optional.empty();
    if (entries.node("columns").isPresent()) {
      YamlNode node = entries.node("columns").get();
      List<Field> all = Stream.of(FIELDS, OPTIONAL).flatMap(List::stream).toList();
      List<String> names = all.stream().map(Field::heading).toList();
      Entries columns = Entries.of(node, "columns", faults, names);
      for (Field field : all) {
        sources.read(columns, field).ifPresent(source -> fields.put(field, source));
      }
      refuseWrongFields(columns, fields, values);
      time = sources.time(columns);
    } else {
      entries.fault("columns", "is missing; say there where taken_at, line and so on come from");
    }
    return time.filter(t -> !values.isEmpty() && fields.keySet().containsAll(FIELDS.subList(0, 5)))
        .map(
            t ->
                new Mapping(
                    entries.text("mapping").orElse(FileNameForm.stem(fileName)),
                    form.get(),
                    fields,
                    t,
                    values,
                    Set.copyOf(entries.texts("missing")),
                    yaml));
  }

  private Optional<FileForm> form(Entries entries) {
    if (entries.node("file").isEmpty()) {
      entries.fault("file", "is missing; say there how the file is written, with its headings");
      return Optional.empty();
    }
    Entries file = Entries.of(entries.node("file").get(), "file", faults, FILE_KEYS);
    List<String> headings = file.texts("headings").stream().map(HeadText::plain).toList();
    if (headings.isEmpty()) {
      file.fault("headings", "there are none; list all headings of the file in their order");
      return Optional.empty();
    }
    try {
      return Optional.of(
          new FileForm(
              Choice.of(file, "encoding", Encoding.class),
              Choice.needed(file, "separator", Separator.COMMA),
              Choice.needed(file, "decimal", DecimalSign.POINT),
              Choice.of(file, "thousands", Thousands.class).orElse(Thousands.NONE),
              file.text("comments"),
              headings,
              wholeNumber(file, "rows_after_header"),
              file.text("name")));
    } catch (IllegalArgumentException e) {
      file.fault("headings", String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }

  private static int wholeNumber(Entries entries, String key) {
    Optional<String> text = entries.text(key);
    if (text.isPresent() && !text.get().matches("[0-9]{1,4}")) {
      entries.fault(key, Words.quoted(text.get()) + " is not a whole number");
      return 0;
    }
    return text.map(Integer::parseInt).orElse(0);
  }

  /**
   * Every field has one source; layer and lane have one unless the columns of readings say them.
   */
  private static void refuseWrongFields(
      Entries columns, Map<Field, Source> fields, List<ValueColumn> values) {
    Set<Field> needed = new HashSet<>(FIELDS);
    boolean saysLayer = values.stream().anyMatch(value -> value.layer().isPresent());
    boolean saysLane = values.stream().anyMatch(value -> value.lane().isPresent());
    refuseTwice(columns, Field.LAYER, saysLayer, fields);
    refuseTwice(columns, Field.LANE, saysLane, fields);
    if (saysLayer) {
      needed.remove(Field.LAYER);
    }
    if (saysLane) {
      needed.remove(Field.LANE);
    }
    for (Field field : FIELDS) {
      if (needed.contains(field) && columns.node(field.heading()).isEmpty()) {
        columns.fault(
            field.heading(),
            "is missing; name its column, or write {constant: ...} where all rows share it");
      }
    }
  }

  private static void refuseTwice(
      Entries columns, Field field, boolean isSaid, Map<Field, Source> fields) {
    if (isSaid && fields.containsKey(field)) {
      columns.fault(field.heading(), "is said here and with the readings; leave one of them out");
    }
  }
}
