package dev.filmward.diagnosis;

/**
 * How far a layer or the total is from how it was before the change, by now.
 *
 * @param position of the reported layer from 1; 0 for the total
 * @param percent of its usual thickness
 * @param um the same in micrometres
 * @param sharePoints how far its share of the total has moved, in percentage points; 0 for the
 *     total
 * @param z how clearly, in standard errors
 */
public record LayerMove(int position, double percent, double um, double sharePoints, double z) {
  /** What a layer moves by without a doubt. */
  private static final double CLEAR = 3;

  public boolean isClear() {
    return Math.abs(z) >= CLEAR;
  }
}
