package dev.filmward.drift;

/**
 * Linear equations whose matrix has only a band around its diagonal that is not 0, solved by
 * elimination without exchanging rows, which is safe where the diagonal outweighs the rest of each
 * row. Mutable, used once.
 *
 * <p>Source: G. H. Golub and C. F. Van Loan, Matrix Computations, 3rd ed. (1996), section 4.3.
 */
final class BandEquations {
  private final int size;
  private final int below;
  private final int above;
  private final double[][] band;
  private final double[] right;

  /** All 0, with so many diagonals below and above the main one. */
  BandEquations(int size, int below, int above) {
    this.size = size;
    this.below = below;
    this.above = above;
    band = new double[size][below + above + 1];
    right = new double[size];
  }

  void add(int row, int column, double value) {
    band[row][column - row + below] += value;
  }

  void addRight(int row, double value) {
    right[row] += value;
  }

  double[] solve() {
    for (int pivot = 0; pivot < size; pivot++) {
      for (int row = pivot + 1; row <= Math.min(size - 1, pivot + below); row++) {
        eliminate(pivot, row);
      }
    }
    double[] solution = right.clone();
    for (int row = size - 1; row >= 0; row--) {
      for (int column = row + 1; column <= Math.min(size - 1, row + above); column++) {
        solution[row] -= band[row][column - row + below] * solution[column];
      }
      solution[row] /= band[row][below];
    }
    return solution;
  }

  private void eliminate(int pivot, int row) {
    double factor = band[row][pivot - row + below] / band[pivot][below];
    if (factor != 0) {
      int end = Math.min(size - 1, pivot + above);
      for (int column = pivot; column <= end; column++) {
        band[row][column - row + below] -= factor * band[pivot][column - pivot + below];
      }
      right[row] -= factor * right[pivot];
    }
  }
}
