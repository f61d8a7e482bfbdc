package dev.filmward.composition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * The T squared chart of a film: takes the mean thickness of every layer in a sample, answers with
 * the distance in total and ratios, and for a point worth asking about with the layers behind it.
 * It hides the direction of a change and cannot tell a mean from a spread, so it stands beside the
 * charts of the layers, never in their place.
 *
 * <p>Each sample is judged by itself; immutable. Source: M. Vives-Mestres, J. Daunis-i-Estadella
 * and J. A. Martin-Fernandez, Individual T2 control chart for compositional data, Journal of
 * Quality Technology 46 (2014) 127, for log-ratios; terms as in {@link TSquaredDesign}.
 */
public final class CompositionChart implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Probability of a point beyond limits of three sigma. */
  public static final double THREE_SIGMA = 0.0027;

  private final CompositionReference usual;
  private final double alpha;
  private final LayerView everything;
  private final TSquaredReference whole;

  /**
   * A chart.
   *
   * @param alpha probability of a false alarm at a point, {@link #THREE_SIGMA} for instance
   */
  public CompositionChart(CompositionReference usual, double alpha) {
    this.usual = usual;
    this.alpha = alpha;
    everything =
        LayerView.total(usual.layers()).and(LayerView.ratios(usual.positions(), usual.layers()));
    whole = usual.seen(everything);
  }

  /** Distance of a sample from the usual composition. */
  public double tSquared(double[] layersUm) {
    return distance(CompositionBaseline.vector(layersUm, usual.layers()));
  }

  private double distance(double[] vector) {
    return whole.tSquared(everything.of(vector));
  }

  public double limit(Phase phase) {
    return limit(phase, alpha);
  }

  /** The distance that a usual sample exceeds with a probability; its median at 0.5. */
  public double limit(Phase phase, double probability) {
    return usual.design().limit(phase, probability);
  }

  /** What the distance of a sample after the baseline is made of, beyond the limit or not. */
  public Decomposition explain(double[] layersUm) {
    return explain(layersUm, Phase.MONITORING);
  }

  /** What a sample's distance is made of, under the limits of its phase. */
  public Decomposition explain(double[] layersUm, Phase phase) {
    double[] vector = CompositionBaseline.vector(layersUm, usual.layers());
    List<Decomposition.Term> terms = new ArrayList<>();
    terms.add(totalTerm(vector));
    for (int position : usual.positions()) {
      terms.add(layerTerm(position, vector));
    }
    return new Decomposition(
        distance(vector),
        List.copyOf(terms),
        usual.design().termLimit(phase, 0, alpha),
        usual.design().termLimit(phase, usual.layers() - 1, alpha),
        new LayerSearch(usual, phase, alpha).behind(vector, terms));
  }

  private Decomposition.Term totalTerm(double[] vector) {
    LayerView ratios = LayerView.ratios(usual.positions(), usual.layers());
    return new Decomposition.Term(
        Decomposition.TOTAL,
        usual.z(LayerView.total(usual.layers()), vector),
        distance(vector) - usual.tSquared(ratios, vector));
  }

  private Decomposition.Term layerTerm(int position, double[] vector) {
    int layers = usual.layers();
    List<Integer> others = usual.positions().stream().filter(other -> other != position).toList();
    LayerView rest = LayerView.total(layers).and(LayerView.ratios(others, layers));
    return new Decomposition.Term(
        position,
        usual.z(LayerView.ratioToOthers(position, layers), vector),
        distance(vector) - usual.tSquared(rest, vector));
  }
}
