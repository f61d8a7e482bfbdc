package dev.filmward.gauge.study;

import dev.filmward.stats.WeightedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the bias goes with the thickness: a line through the bias of every reading. Where the line is
 * level at 0 the gauge is right everywhere. Immutable.
 *
 * <p>Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III B (from memory), which
 * takes all readings alike; weights by the spread of each piece: Draper and Smith (1998), 9.2.
 */
public record Linearity(Weighting weighting, WeightedLine line) {
  private static final int LEAST_READINGS = 3;

  /** What each reading counts. */
  public enum Weighting {
    /** All alike. */
    ALIKE,
    /** One over the variance of its piece. */
    BY_SPREAD
  }

  /** Empty where there are fewer than two thicknesses, or a piece has no spread to weigh by. */
  public static Optional<Linearity> of(List<ReferencePiece> pieces, Weighting weighting) {
    long places = pieces.stream().mapToDouble(ReferencePiece::referenceUm).distinct().count();
    int readings = pieces.stream().mapToInt(piece -> piece.um().size()).sum();
    boolean isWeighable =
        weighting == Weighting.ALIKE || pieces.stream().allMatch(ReferencePiece::hasSpread);
    return places < 2 || readings < LEAST_READINGS || !isWeighable
        ? Optional.empty()
        : Optional.of(new Linearity(weighting, line(pieces, weighting)));
  }

  private static WeightedLine line(List<ReferencePiece> pieces, Weighting weighting) {
    List<Double> x = new ArrayList<>();
    List<Double> y = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (ReferencePiece piece : pieces) {
      double weight = weighting == Weighting.ALIKE ? 1 : 1 / piece.variance();
      for (double um : piece.um()) {
        x.add(piece.referenceUm());
        y.add(um - piece.referenceUm());
        weights.add(weight);
      }
    }
    return WeightedLine.of(numbers(x), numbers(y), numbers(weights));
  }

  private static double[] numbers(List<Double> values) {
    return values.stream().mapToDouble(value -> value).toArray();
  }
}
