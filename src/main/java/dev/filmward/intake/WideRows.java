package dev.filmward.intake;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.util.List;

/**
 * Takes rows of the wide layout: a lane of a sample each, with a column for every layer. One owner,
 * one thread.
 */
final class WideRows implements RowTaker {
  private final RowHead head;
  private final Cells cells;
  private final Tally tally;
  private final RowTemperature temperature;
  private final List<ThicknessColumn> columns;
  private final PerStructure<int[]> positions = new PerStructure<>(this::find);

  WideRows(FileSteps steps) {
    this.head = steps.head();
    this.cells = steps.cells();
    this.tally = steps.tally();
    this.temperature = steps.temperature();
    this.columns = steps.dialect().layerColumns().stream().map(ThicknessColumn::of).toList();
  }

  @Override
  public void take(Row row) {
    tally.row();
    if (!head.read(row) || !temperature.read(row)) {
      return;
    }
    Structure structure = head.structure();
    int[] positionByColumn = positions.of(structure);
    for (int i = 0; i < positionByColumn.length; i++) {
      ThicknessColumn column = columns.get(i);
      if (positionByColumn[i] != LayerNames.NONE) {
        cells.take(row, column, positionByColumn[i]);
      } else if (cells.isMissing(row, column)) {
        tally.missing();
      } else {
        tally.rejectCell(row, column.column(), strayReason(column.column(), structure));
      }
    }
  }

  /** The position behind each layer column, or NONE. */
  int[] positionsIn(Structure structure) {
    return positions.of(structure);
  }

  private int[] find(Structure structure) {
    return columns.stream().mapToInt(column -> positionIn(structure, column.column())).toArray();
  }

  private static int positionIn(Structure structure, Column column) {
    int position =
        column.layer().isPresent()
            ? positionOf(column.layer().get(), structure)
            : column.position().orElseThrow();
    return position <= structure.reported().size() ? position : LayerNames.NONE;
  }

  private static int positionOf(String heading, Structure structure) {
    return structure
        .layerNamed(heading)
        .or(
            () ->
                structure.reported().stream()
                    .filter(l -> l.name().equalsIgnoreCase(heading))
                    .findFirst())
        .map(ReportedLayer::position)
        .orElse(LayerNames.NONE);
  }

  private static String strayReason(Column column, Structure structure) {
    return column
        .layer()
        .map(name -> Reasons.unknownLayer(name, structure))
        .orElseGet(() -> Reasons.noPosition(column.position().orElseThrow(), structure));
  }
}
