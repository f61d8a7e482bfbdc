package dev.filmward.rule.price;

/** Counts orders of points one by one. */
final class Permutations {
  private final int[] order;
  private final boolean[] taken;
  private long all;
  private long trends;

  private Permutations(int n) {
    order = new int[n];
    taken = new boolean[n];
  }

  /** Share of the orders of n points in which six that follow each other rise, or fall. */
  static double withTrend(int n) {
    Permutations count = new Permutations(n);
    count.place(0);
    return count.trends / (double) count.all;
  }

  private void place(int at) {
    if (at == order.length) {
      all++;
      trends += hasTrend() ? 1 : 0;
      return;
    }
    for (int rank = 0; rank < order.length; rank++) {
      if (!taken[rank]) {
        taken[rank] = true;
        order[at] = rank;
        place(at + 1);
        taken[rank] = false;
      }
    }
  }

  private boolean hasTrend() {
    int rises = 0;
    int falls = 0;
    for (int i = 1; i < order.length; i++) {
      rises = order[i] > order[i - 1] ? rises + 1 : 0;
      falls = order[i] < order[i - 1] ? falls + 1 : 0;
      if (rises == 5 || falls == 5) {
        return true;
      }
    }
    return false;
  }
}
