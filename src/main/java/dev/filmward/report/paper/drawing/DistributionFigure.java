package dev.filmward.report.paper.drawing;

import java.util.Arrays;

/**
 * What a {@link DistributionChart} shows. Arrays are copied. Immutable.
 *
 * @param edges of the bars, one more than there are counts
 * @param curveAt values at which the fitted curve is known; empty where none was used
 * @param curveCounts what the curve expects in a bar there
 * @param target NaN where there is none
 */
@SuppressWarnings("ArrayRecordComponent")
public record DistributionFigure(
    double[] edges,
    double[] counts,
    double[] curveAt,
    double[] curveCounts,
    SpecLand land,
    double target,
    String targetWords,
    Numbers numbers) {
  public DistributionFigure {
    if (counts.length > 0 && edges.length != counts.length + 1) {
      throw new IllegalArgumentException(
          counts.length + " bars have " + (counts.length + 1) + " edges, not " + edges.length);
    }
    if (curveAt.length != curveCounts.length) {
      throw new IllegalArgumentException("a curve has as many heights as places");
    }
    edges = edges.clone();
    counts = counts.clone();
    curveAt = curveAt.clone();
    curveCounts = curveCounts.clone();
  }

  @Override
  public String toString() {
    return "DistributionFigure" + Arrays.toString(edges) + Arrays.toString(counts);
  }
}
