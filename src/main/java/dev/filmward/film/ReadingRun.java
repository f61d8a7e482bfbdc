package dev.filmward.film;

/**
 * Readings of one sample that follow each other in a file, at most {@value #MOST}. Filled again and
 * again by its owner: good only while it is handed on. For one thread.
 */
public final class ReadingRun {
  public static final int MOST = 256;

  private final int[] positions = new int[MOST];
  private final int[] lanes = new int[MOST];
  private final double[] um = new double[MOST];
  private int size;

  /** Adds a reading; finite and above zero. There must be room. */
  public void add(int position, int lane, double thicknessUm) {
    int at = size;
    positions[at] = position;
    lanes[at] = lane;
    um[at] = thicknessUm;
    size = at + 1;
  }

  public int size() {
    return size;
  }

  public int position(int index) {
    return positions[index];
  }

  public int lane(int index) {
    return lanes[index];
  }

  public double um(int index) {
    return um[index];
  }

  public void clear() {
    size = 0;
  }
}
