package dev.filmward.intake;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** The fields of the rows of one mapped file, each from where its mapping says. One owner. */
final class MappedFields {
  private final Map<Field, MappedField> fields = new EnumMap<>(Field.class);

  /**
   * Finds what is the same for all rows, and prepares the rest.
   *
   * @throws FileRefused if the name or the lines above the header do not say what they should
   */
  static MappedFields of(Mapping mapping, FileFacts facts, String fileName) throws FileRefused {
    MappedFields found = new MappedFields();
    MappedColumns columns = new MappedColumns(mapping);
    for (Map.Entry<Field, Source> entry : mapping.sources().entrySet()) {
      Source source = entry.getValue();
      Field field = entry.getKey();
      switch (source.kind()) {
        case COLUMN -> found.fields.put(field, MappedField.ofColumns(source, columns));
        case TAKEN_AT -> found.fields.put(field, MappedField.always(source, ""));
        case COUNTED -> {}
        case CONSTANT, PREAMBLE, FILE -> {
          String name = source.names().get(0);
          String text =
              facts
                  .text(source.kind(), name, mapping.form())
                  .orElseThrow(() -> new FileRefused(lacks(mapping, field, source, fileName)));
          found.fields.put(field, MappedField.always(source, text));
        }
      }
    }
    return found;
  }

  MappedField needed(Field field) {
    return optional(field).orElseThrow();
  }

  Optional<MappedField> optional(Field field) {
    return Optional.ofNullable(fields.get(field));
  }

  private static String lacks(Mapping mapping, Field field, Source source, String fileName) {
    String name = Words.quoted(source.names().get(0));
    String where =
        source.kind() == Source.Kind.FILE
            ? "its name is not of the form " + Words.quoted(mapping.form().name().orElse(""))
            : "no line above its header says " + name;
    return fileName
        + ": "
        + where
        + ", where the mapping "
        + Words.quoted(mapping.name())
        + " looks for "
        + field.heading()
        + "; name the file so, or change the mapping";
  }
}
