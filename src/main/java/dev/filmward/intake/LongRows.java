package dev.filmward.intake;

import dev.filmward.film.Structure;

/** Takes rows of the long layout: one reading each. One owner, one thread. */
final class LongRows implements RowTaker {
  private final RowHead head;
  private final Cells cells;
  private final Tally tally;
  private final RowTemperature temperature;
  private final Column layerColumn;
  private final int layerField;
  private final ThicknessColumn thickness;
  private final PerStructure<LayerNames> names = new PerStructure<>(LayerNames::new);

  LongRows(FileSteps steps) {
    Dialect dialect = steps.dialect();
    this.head = steps.head();
    this.cells = steps.cells();
    this.tally = steps.tally();
    this.temperature = steps.temperature();
    this.layerField = dialect.indexOf(Field.LAYER);
    this.layerColumn = dialect.columns().get(layerField);
    this.thickness = ThicknessColumn.of(dialect.columns().get(dialect.indexOf(Field.THICKNESS)));
  }

  @Override
  public void take(Row row) {
    tally.row();
    if (!head.read(row)) {
      return;
    }
    Structure structure = head.structure();
    int position = names.of(structure).position(row, layerField);
    if (position == LayerNames.NONE) {
      tally.rejectRow(row, layerColumn, Reasons.unknownLayer(row.text(layerField), structure));
    } else if (temperature.read(row)) {
      cells.take(row, thickness, position);
    }
  }
}
