package dev.filmward.composition;

import java.io.Serializable;
import java.util.Optional;

/**
 * Sums up samples, in time order, that the usual composition of a film is computed from: of each
 * sample the mean thickness of every reported layer. A sample in which a layer is missing or zero
 * has no logarithms and is refused; quarantine it first.
 *
 * <p>Mutable, for one thread, constant memory; a baseline merges with the one that follows it in
 * time.
 */
public final class CompositionBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int layers;
  private final VectorBaseline vectors;

  /** For films of {@code layers} reported layers, at least 2. */
  public CompositionBaseline(int layers) {
    if (layers < 2) {
      throw new IllegalArgumentException("a composition has two layers or more, not " + layers);
    }
    this.layers = layers;
    vectors = new VectorBaseline(layers + 1);
  }

  /** Adds a sample: the thickness of each layer in micrometres, in the order of positions. */
  public void add(double[] layersUm) {
    vectors.add(vector(layersUm, layers));
  }

  /** Adds all samples of a later baseline; the later one stays as it is. */
  public void merge(CompositionBaseline later) {
    vectors.merge(later.vectors);
  }

  public long samples() {
    return vectors.samples();
  }

  /**
   * The usual composition, frozen. There must be more samples than layers ({@link
   * IllegalStateException}), and ten times as many before limits are worth freezing.
   */
  public CompositionReference reference(CovarianceEstimate estimate) {
    if (samples() <= layers + 1) {
      throw new IllegalStateException(
          samples() + " samples are too few for " + layers + " layers; collect more");
    }
    return new CompositionReference(
        vectors.means(),
        vectors.covariance(estimate),
        new TSquaredDesign(layers, samples(), 1, estimate));
  }

  /**
   * A chart under limits of three sigma; empty where there are too few samples, or where a layer
   * does not vary.
   */
  public Optional<CompositionChart> chart(CovarianceEstimate estimate) {
    if (samples() <= layers + 2) {
      return Optional.empty();
    }
    try {
      CompositionChart chart =
          new CompositionChart(reference(estimate), CompositionChart.THREE_SIGMA);
      return Optional.of(chart);
    } catch (IllegalArgumentException singular) {
      return Optional.empty();
    }
  }

  /** The total and the logarithms of the layers. */
  static double[] vector(double[] layersUm, int layers) {
    if (layersUm.length != layers) {
      throw new IllegalArgumentException(
          "the thickness of " + layers + " layers is needed, not of " + layersUm.length);
    }
    double[] vector = new double[layers + 1];
    for (int i = 0; i < layers; i++) {
      if (!(layersUm[i] > 0) || !Double.isFinite(layersUm[i])) {
        throw new IllegalArgumentException(
            "layer " + (i + 1) + " has no ratio to others at " + layersUm[i] + " um");
      }
      vector[0] += layersUm[i];
      vector[i + 1] = Math.log(layersUm[i]);
    }
    return vector;
  }
}
