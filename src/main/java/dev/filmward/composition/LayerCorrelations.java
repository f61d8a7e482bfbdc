package dev.filmward.composition;

import dev.filmward.stats.CrossMoments;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes the mean thickness of every layer, one sample at a time, and tells how the layers move
 * together: their thicknesses, their shares of the total, and their centred log-ratios (the
 * logarithm of a layer less the mean of all logarithms).
 *
 * <p>Shares sum to 1, so that what one gains others lose: their correlations are pushed below zero
 * by that alone, to -1 for two layers. Centred log-ratios sum to 0 and are pushed less, to -1 / (p
 * - 1) for p layers alike. A sample with a layer that is missing or zero has no logarithms and is
 * refused.
 *
 * <p>Mutable, for one thread; memory grows with the square of the layers only, not with the
 * samples. Those of the same film merge.
 *
 * <p>Source: J. Aitchison, The Statistical Analysis of Compositional Data (1986), chapters 3 and 4.
 */
public final class LayerCorrelations implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Samples below which a trade is not told from chance (common practice, no source). */
  private static final long FEWEST_FOR_TRADE = 8;

  private static final double TRADE = -0.7;

  private final int layers;
  private final CrossMoments moments;

  /** For films of {@code layers} reported layers, at least 2. */
  public LayerCorrelations(int layers) {
    if (layers < 2) {
      throw new IllegalArgumentException("layers move together if there are two, not " + layers);
    }
    this.layers = layers;
    moments = new CrossMoments(3 * layers);
  }

  /** Adds a sample: the thickness of each layer in micrometres, in the order of positions. */
  public void add(double[] layersUm) {
    double[] logs = CompositionBaseline.vector(layersUm, layers);
    double meanLog = 0;
    for (int i = 1; i <= layers; i++) {
      meanLog += logs[i] / layers;
    }
    double[] figures = new double[3 * layers];
    for (int i = 0; i < layers; i++) {
      figures[i] = layersUm[i];
      figures[layers + i] = layersUm[i] / logs[0];
      figures[2 * layers + i] = logs[i + 1] - meanLog;
    }
    moments.add(figures);
  }

  /** Adds all samples of another one; the other stays as it is. */
  public void merge(LayerCorrelations other) {
    moments.merge(other.moments);
  }

  public int layers() {
    return layers;
  }

  public long samples() {
    return moments.count();
  }

  /** All pairs, by the position of the first, then of the second layer. */
  public List<LayerPair> pairs() {
    double[][] sums = moments.sumsOfProducts();
    List<LayerPair> pairs = new ArrayList<>();
    for (int first = 0; first < layers; first++) {
      for (int second = first + 1; second < layers; second++) {
        pairs.add(
            new LayerPair(
                first + 1,
                second + 1,
                correlation(sums, first, second),
                correlation(sums, layers + first, layers + second),
                correlation(sums, 2 * layers + first, 2 * layers + second),
                isTrade(sums, first, second)));
      }
    }
    return pairs;
  }

  private Optional<Correlation> correlation(double[][] sums, int i, int j) {
    return Correlation.of(samples(), sums[i][i], sums[i][j], sums[j][j]);
  }

  /** What one loses the other gains, so that both together vary less than either. */
  private boolean isTrade(double[][] sums, int i, int j) {
    double together = sums[i][i] + 2 * sums[i][j] + sums[j][j];
    return samples() >= FEWEST_FOR_TRADE
        && together < Math.min(sums[i][i], sums[j][j])
        && sums[i][j] < TRADE * Math.sqrt(sums[i][i] * sums[j][j]);
  }
}
