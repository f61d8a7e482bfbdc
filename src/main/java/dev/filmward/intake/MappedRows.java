package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structure;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Takes the rows of a mapped file. Rows without anything in them, comments, and the header where it
 * comes again are no rows; they are counted apart. One owner, one thread.
 */
final class MappedRows implements RowTaker {
  private final Mapping mapping;
  private final MappedHead head;
  private final Tally tally;
  private final ReadingSink sink;
  private final MappedNumber number;
  private final List<Column> columns;
  private final int[] valueFields;
  private final Optional<MappedField> layer;
  private final Optional<MappedField> lane;
  private final boolean lanesAreCounted;
  private final Optional<MappedField> temperature;
  private final Celsius celsius;
  private final MappedLanes lanes = new MappedLanes();
  private final PerStructure<int[]> positions;
  private final MappedOutside outside;

  MappedRows(Mapping mapping, MappedHead head, MappedFields fields, Tally tally, ReadingSink sink) {
    this.mapping = mapping;
    this.head = head;
    this.tally = tally;
    this.sink = sink;
    this.number = new MappedNumber(mapping.form(), mapping.missing());
    MappedColumns named = new MappedColumns(mapping);
    this.columns = named.all();
    this.valueFields = mapping.values().stream().mapToInt(v -> named.index(v.column())).toArray();
    this.layer = fields.optional(Field.LAYER);
    this.lane = fields.optional(Field.LANE);
    this.temperature = fields.optional(Field.TEMPERATURE_C);
    this.celsius = new Celsius(String.valueOf(mapping.form().decimal().sign()));
    this.lanesAreCounted =
        mapping.sources().containsKey(Field.LANE)
            && mapping.source(Field.LANE).kind() == Source.Kind.COUNTED;
    this.positions = new PerStructure<>(this::positionsIn);
    this.outside = new MappedOutside(mapping.form());
  }

  @Override
  public void take(Row row) {
    if (outside.holds(row)) {
      return;
    }
    tally.row();
    if (!row.fault.isEmpty() || !outside.fits(row)) {
      tally.rejectRow(row, Reasons.notSplit(row, columns.size()));
      return;
    }
    layer.ifPresent(field -> field.changes(row));
    lane.ifPresent(field -> field.changes(row));
    temperature.ifPresent(field -> field.changes(row));
    if (head.read(row)) {
      takePlaces(row);
    }
  }

  void note(List<String> notes) {
    outside.note(notes);
  }

  private void takePlaces(Row row) {
    Structure structure = head.structure();
    int rowLayer = layer.isPresent() ? positionOf(layer.get().text(), structure) : LayerNames.NONE;
    if (layer.isPresent() && rowLayer == LayerNames.NONE) {
      head.rejectAt(row, layer.get(), Reasons.unknownLayer(layer.get().text(), structure));
      return;
    }
    int rowLane = laneOf(row, rowLayer);
    if (rowLane == MappedLanes.NONE || !readTemperature(row)) {
      return;
    }
    int[] layers = positions.of(structure);
    for (int i = 0; i < valueFields.length; i++) {
      OptionalInt own = mapping.values().get(i).lane();
      int position = layer.isPresent() ? rowLayer : layers[i];
      take(row, i, position, own.orElse(rowLane));
    }
  }

  /** The lane of the row, 0 where the columns say it, or NONE after it has been rejected. */
  private int laneOf(Row row, int rowLayer) {
    if (lanesAreCounted) {
      int counted = lanes.next(head.key(), rowLayer);
      if (counted == MappedLanes.NONE) {
        tally.rejectRow(
            row,
            "the rows of this sample lie apart in the file, so that its lanes cannot be counted");
      }
      return counted;
    }
    if (lane.isEmpty()) {
      return 0;
    }
    int read = MappedLanes.read(lane.get().text());
    if (read == MappedLanes.NONE) {
      head.rejectAt(row, lane.get(), Reasons.noLane(lane.get().text(), MappedLanes.GREATEST));
    }
    return read;
  }

  private boolean readTemperature(Row row) {
    if (temperature.isEmpty() || celsius.read(temperature.get().text())) {
      return true;
    }
    head.rejectAt(row, temperature.get(), celsius.reason());
    return false;
  }

  private void giveTemperature(int rowLane) {
    OptionalDouble degrees = celsius.degrees();
    if (degrees.isPresent()) {
      sink.temperature(
          head.giveKey(), head.takenAt(), head.structure(), rowLane, degrees.getAsDouble());
    }
  }

  private void take(Row row, int value, int position, int rowLane) {
    ValueColumn column = mapping.values().get(value);
    MappedNumber.Kind kind = number.read(row.text(valueFields[value]), column.unit());
    Column shown = columns.get(valueFields[value]);
    if (position == LayerNames.NONE) {
      takeStray(row, value, kind);
    } else if (kind == MappedNumber.Kind.MISSING) {
      tally.missing();
      sink.missing(head.giveKey(), head.takenAt(), head.structure(), position, rowLane);
      giveTemperature(rowLane);
    } else if (kind == MappedNumber.Kind.FAULT) {
      tally.rejectCell(row, shown, number.reason());
    } else {
      tally.reading();
      sink.reading(
          head.giveKey(), head.takenAt(), head.structure(), position, rowLane, number.um());
      giveTemperature(rowLane);
    }
  }

  /** A cell of a layer that the row's structure does not have. */
  private void takeStray(Row row, int value, MappedNumber.Kind kind) {
    if (kind == MappedNumber.Kind.MISSING) {
      tally.missing();
    } else {
      String name = mapping.values().get(value).layer().orElse("");
      String reason = Reasons.unknownLayer(name, head.structure());
      tally.rejectCell(row, columns.get(valueFields[value]), reason);
    }
  }

  private int[] positionsIn(Structure structure) {
    return mapping.values().stream()
        .mapToInt(v -> v.layer().map(l -> positionOf(l, structure)).orElse(LayerNames.NONE))
        .toArray();
  }

  /** The position of a reported layer by position or name, in any case, or NONE. */
  static int positionOf(String layer, Structure structure) {
    if (layer.matches("[0-9]{1,6}")) {
      int position = Integer.parseInt(layer);
      return position >= 1 && position <= structure.reported().size() ? position : LayerNames.NONE;
    }
    return structure.reported().stream()
        .filter(reported -> reported.name().equalsIgnoreCase(layer))
        .findFirst()
        .map(reported -> reported.position())
        .orElse(LayerNames.NONE);
  }
}
