package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Reads which columns hold thicknesses; notes what is wrong. One owner, one thread. */
final class ReadingsReader {
  private static final List<String> KEYS = List.of("column", "unit", "layer", "lane");

  /** Says that every cell carries its unit. */
  static final String IN_CELL = "cell";

  private final Entries mapping;
  private final List<String> headings;
  private final Set<Integer> columns = new HashSet<>();
  private final Set<String> places = new HashSet<>();

  ReadingsReader(Entries mapping, List<String> headings) {
    this.mapping = mapping;
    this.headings = headings;
  }

  List<ValueColumn> read() {
    List<ValueColumn> values = new ArrayList<>();
    if (mapping.node("readings").orElse(null) instanceof YamlNode.Listing listing) {
      for (YamlNode node : listing.items()) {
        String place = "readings, number " + (values.size() + 1);
        values.add(value(Entries.of(node, place, mapping.faults(), KEYS)));
      }
    }
    if (values.isEmpty()) {
      mapping.fault("readings", "there are none; list the columns that hold thicknesses");
    }
    refuseMixture(values);
    return values;
  }

  private ValueColumn value(Entries entries) {
    String column = HeadText.plain(entries.text("column").orElse(""));
    OptionalInt index = MappedColumns.index(headings, column);
    if (index.isEmpty()) {
      entries.fault("column", SourceReader.noColumn(column, headings));
    } else if (!columns.add(index.getAsInt())) {
      entries.fault("column", Words.quoted(column) + " is there twice; leave one of them out");
    }
    Optional<String> layer = entries.text("layer");
    OptionalInt lane = lane(entries);
    if (layer.filter("?"::equals).isPresent()) {
      entries.fault("layer", "is not answered yet; write its position or name for the ?");
    }
    String place = layer.orElse("").toLowerCase(Locale.ROOT) + " " + lane;
    if (!places.add(place)) {
      entries.fault("layer", "another column is of the same layer and lane");
    }
    return new ValueColumn(column, unit(entries), layer, lane);
  }

  private static Optional<LengthUnit> unit(Entries entries) {
    Optional<String> text = entries.text("unit");
    if (text.filter(IN_CELL::equals).isPresent()) {
      return Optional.empty();
    }
    Optional<LengthUnit> unit = text.flatMap(Units::parse);
    if (unit.isEmpty()) {
      String said =
          text.filter(t -> !t.equals("?"))
              .map(t -> Words.quoted(t) + " is no unit")
              .orElse("is not given");
      entries.fault(
          "unit", said + "; write um, mm, mil or in, or cell where every cell carries its own");
    }
    return unit;
  }

  private static OptionalInt lane(Entries entries) {
    Optional<String> text = entries.text("lane");
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!text.get().matches("[0-9]{1,5}")) {
      entries.fault("lane", Reasons.noLane(text.get(), MappedLanes.GREATEST));
      return OptionalInt.of(0);
    }
    return OptionalInt.of(Integer.parseInt(text.get()));
  }

  private void refuseMixture(List<ValueColumn> values) {
    long layers = values.stream().filter(value -> value.layer().isPresent()).count();
    long lanes = values.stream().filter(value -> value.lane().isPresent()).count();
    if ((layers > 0 && layers < values.size()) || (lanes > 0 && lanes < values.size())) {
      mapping.fault(
          "readings",
          "some columns say their layer or lane and some do not; let all of them say it");
    }
  }
}
