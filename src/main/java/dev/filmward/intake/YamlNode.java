package dev.filmward.intake;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A piece of a YAML document with the line it stands on. Immutable. */
sealed interface YamlNode {
  int line();

  /** A value as it is written; empty for null. */
  record Scalar(int line, String text) implements YamlNode {}

  record Listing(int line, List<YamlNode> items) implements YamlNode {
    public Listing {
      items = List.copyOf(items);
    }
  }

  /** Keys in the order of the document, and the lines they stand on. */
  record Mapping(int line, Map<String, YamlNode> values, Map<String, Integer> keyLines)
      implements YamlNode {
    public Mapping {
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
      keyLines = Map.copyOf(keyLines);
    }

    /** Where a key stands, or should stand. */
    int keyLine(String key) {
      return keyLines.getOrDefault(key, line);
    }
  }

  /** What it is, for messages. */
  default String words() {
    if (this instanceof Scalar scalar) {
      return scalar.text.isEmpty() ? "nothing" : Words.quoted(scalar.text);
    }
    return this instanceof Listing ? "a list" : "a mapping of keys to values";
  }
}
