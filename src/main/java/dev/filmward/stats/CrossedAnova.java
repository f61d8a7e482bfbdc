package dev.filmward.stats;

import dev.filmward.stats.AnovaTable.Part;

/**
 * Analysis of variance of a balanced crossed layout: rows by columns, the same number of repeats in
 * each cell. Squares are those of means of deviations from the first number, so that a large common
 * part costs no digits, and none of them is a difference that could come out negative.
 *
 * <p>Numbers are finite; there are at least two rows, two columns and two repeats, the same number
 * everywhere ({@link IllegalArgumentException}). Immutable.
 *
 * <p>Source: D. C. Montgomery, Design and Analysis of Experiments, 8th ed. (2013), section 5.3.2.
 *
 * @param rows squares of the rows' means about the grand mean
 * @param columns squares of the columns' means about the grand mean
 * @param interaction squares of what the cells' means differ from the sum of both
 * @param within squares of the numbers about their cell's mean
 */
public record CrossedAnova(Part rows, Part columns, Part interaction, Part within) {

  /**
   * The table of some numbers.
   *
   * @param values by row, column and repeat
   */
  public static CrossedAnova of(double[][][] values) {
    return new Layout(values).table();
  }

  /** Degrees of freedom and squares of everything about the grand mean. */
  public Part total() {
    return new Part(
        rows.sumOfSquares()
            + columns.sumOfSquares()
            + interaction.sumOfSquares()
            + within.sumOfSquares(),
        rows.degrees() + columns.degrees() + interaction.degrees() + within.degrees());
  }

  /** The means of cells, rows and columns while they are being worked out. */
  private static final class Layout {
    private final int rows;
    private final int columns;
    private final int repeats;
    private final Moments[] rowMoments;
    private final Moments[] columnMoments;
    private final Moments all = new Moments();
    private final double[][] cellMeans;
    private final CompensatedSum within = new CompensatedSum();

    Layout(double[][][] values) {
      rows = values.length;
      columns = rows == 0 ? 0 : values[0].length;
      repeats = columns == 0 ? 0 : values[0][0].length;
      if (rows < 2 || columns < 2 || repeats < 2) {
        throw new IllegalArgumentException(
            "no crossed layout: " + rows + " rows, " + columns + " columns, " + repeats);
      }
      rowMoments = fresh(rows);
      columnMoments = fresh(columns);
      cellMeans = new double[rows][columns];
      double origin = values[0][0][0];
      for (int row = 0; row < rows; row++) {
        check(values[row].length == columns);
        for (int column = 0; column < columns; column++) {
          take(row, column, cell(values[row][column], origin));
        }
      }
    }

    private Moments cell(double[] repeated, double origin) {
      check(repeated.length == repeats);
      Moments cell = new Moments();
      for (double value : repeated) {
        cell.add(value - origin);
      }
      return cell;
    }

    private void take(int row, int column, Moments cell) {
      within.add(cell.sumOfSquares());
      cellMeans[row][column] = cell.mean();
      rowMoments[row].add(cell.mean());
      columnMoments[column].add(cell.mean());
      all.add(cell.mean());
    }

    CrossedAnova table() {
      return new CrossedAnova(
          new Part((double) columns * repeats * squares(rowMoments), rows - 1),
          new Part((double) rows * repeats * squares(columnMoments), columns - 1),
          new Part(repeats * leftOver(), (long) (rows - 1) * (columns - 1)),
          new Part(within.value(), (long) rows * columns * (repeats - 1)));
    }

    private double leftOver() {
      Moments left = new Moments();
      for (int row = 0; row < rows; row++) {
        for (int column = 0; column < columns; column++) {
          left.add(
              cellMeans[row][column]
                  - rowMoments[row].mean()
                  - columnMoments[column].mean()
                  + all.mean());
        }
      }
      return left.sumOfSquares();
    }

    private static double squares(Moments[] groups) {
      Moments means = new Moments();
      for (Moments group : groups) {
        means.add(group.mean());
      }
      return means.sumOfSquares();
    }

    private static Moments[] fresh(int count) {
      Moments[] moments = new Moments[count];
      for (int i = 0; i < count; i++) {
        moments[i] = new Moments();
      }
      return moments;
    }

    private static void check(boolean isBalanced) {
      if (!isBalanced) {
        throw new IllegalArgumentException("not balanced: rows and cells differ in size");
      }
    }
  }
}
