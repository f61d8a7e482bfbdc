package dev.filmward.intake;

/**
 * A column that holds thicknesses. Immutable.
 *
 * @param field its index in a row
 * @param micrometres how many its unit is
 */
record ThicknessColumn(Column column, int field, double micrometres) {

  static ThicknessColumn of(Column column) {
    return new ThicknessColumn(
        column, column.number() - 1, column.unit().orElseThrow().micrometres());
  }
}
