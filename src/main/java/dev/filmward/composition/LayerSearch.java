package dev.filmward.composition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the fewest layers whose removal makes the ratios among the rest usual again, one layer at a
 * time, the one that the distance loses most by first. Of two layers that are left and whose ratio
 * is unusual, both are named. The total is named where it is beyond its limit by itself. Immutable.
 *
 * <p>Source: after R. L. Mason, N. D. Tracy and J. C. Young, A practical approach for interpreting
 * multivariate T2 control chart signals, Journal of Quality Technology 29 (1997) 396, whose steps
 * remove terms until the distance of the rest is within its limit.
 */
final class LayerSearch {
  private final CompositionReference usual;
  private final Phase phase;
  private final double alpha;

  LayerSearch(CompositionReference usual, Phase phase, double alpha) {
    this.usual = usual;
    this.phase = phase;
    this.alpha = alpha;
  }

  List<Integer> behind(double[] vector, List<Decomposition.Term> terms) {
    List<Integer> behind = new ArrayList<>(layers(vector));
    double zTotal = terms.get(Decomposition.TOTAL).zAlone();
    if (zTotal * zTotal > usual.design().termLimit(phase, 0, alpha)) {
      behind.add(Decomposition.TOTAL);
    }
    if (behind.isEmpty() && isUnusual(vector)) {
      behind.add(leastFitting(terms));
    }
    return List.copyOf(behind);
  }

  private List<Integer> layers(double[] vector) {
    List<Integer> named = new ArrayList<>();
    List<Integer> rest = new ArrayList<>(usual.positions());
    while (rest.size() >= 2 && ratios(rest, vector) > limitOfRatios(rest)) {
      if (rest.size() == 2) {
        named.addAll(rest);
        rest.clear();
      } else {
        Integer worst = worst(rest, vector);
        named.add(worst);
        rest.remove(worst);
      }
    }
    return named;
  }

  /** The layer without which the distance of the ratios is least. */
  private Integer worst(List<Integer> positions, double[] vector) {
    return positions.stream()
        .min(Comparator.comparingDouble(position -> ratios(without(positions, position), vector)))
        .orElseThrow();
  }

  private static List<Integer> without(List<Integer> positions, Integer left) {
    return positions.stream().filter(position -> !position.equals(left)).toList();
  }

  private double ratios(List<Integer> positions, double[] vector) {
    return usual.tSquared(LayerView.ratios(positions, usual.layers()), vector);
  }

  private double limitOfRatios(List<Integer> positions) {
    return usual.design().ofWidth(positions.size() - 1).limit(phase, alpha);
  }

  private boolean isUnusual(double[] vector) {
    LayerView everything =
        LayerView.total(usual.layers()).and(LayerView.ratios(usual.positions(), usual.layers()));
    return usual.tSquared(everything, vector) > usual.design().limit(phase, alpha);
  }

  private static int leastFitting(List<Decomposition.Term> terms) {
    return terms.stream()
        .max(Comparator.comparingDouble(Decomposition.Term::givenOthers))
        .orElseThrow()
        .position();
  }
}
