package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Columns of a chart, filled a row at a time; a column that is never filled is empty. */
final class Columns {
  private static final List<String> NAMES =
      List.of(
          "takenAt",
          "roll",
          "sample",
          "size",
          "mean",
          "range",
          "least",
          "greatest",
          "meanLower",
          "meanCentre",
          "meanUpper",
          "rangeLower",
          "rangeCentre",
          "rangeUpper",
          "file");

  /** There where they are asked for. */
  private static final List<String> OF_AVERAGE =
      List.of("average", "averageLower", "averageCentre", "averageUpper");

  private final Map<String, ArrayNode> byName = new LinkedHashMap<>();

  Columns() {
    hold(NAMES);
  }

  private void hold(List<String> names) {
    names.forEach(name -> byName.put(name, JsonNodeFactory.instance.arrayNode()));
  }

  Columns withAverage() {
    hold(OF_AVERAGE);
    return this;
  }

  void add(String name, long value) {
    column(name).add(value);
  }

  void add(String name, String value) {
    column(name).add(value);
  }

  void add(String name, Optional<Double> value) {
    column(name).add(value.orElse(null));
  }

  ObjectNode json() {
    ObjectNode node = Wire.object();
    byName.forEach(node::set);
    return node;
  }

  private ArrayNode column(String name) {
    ArrayNode column = byName.get(name);
    if (column == null) {
      throw new IllegalArgumentException("no column " + name);
    }
    return column;
  }
}
