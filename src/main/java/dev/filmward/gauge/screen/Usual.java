package dev.filmward.gauge.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * What is usual for each layer and lane: the median of recent samples where there are enough of
 * them, else the structure's targets. Immutable.
 */
final class Usual {
  /** So many samples are enough for a median to be better than a target. */
  static final int ENOUGH = 8;

  private static final double LEAST_NOISE = 0.005;
  private static final double USUAL_NOISE = 0.02;

  /** Timing, ns; 0.1 ns is common for thin layers, no source. */
  private static final double TIMING_NS = 0.1;

  /** Films are run that much off their targets. */
  private static final double OFF_TARGET = 0.05;

  private final double[] layerNs;
  private final Map<Integer, double[]> laneNs;
  private final double[] noise;
  private final double[] meanNoise;
  private final boolean isSettled;

  private Usual(
      double[] layerNs,
      Map<Integer, double[]> laneNs,
      double[] noise,
      double[] meanNoise,
      boolean isSettled) {
    this.layerNs = layerNs;
    this.laneNs = laneNs;
    this.noise = noise;
    this.meanNoise = meanNoise;
    this.isSettled = isSettled;
  }

  static Usual ofTargets(HeardFilm film) {
    double[] ns = IntStream.rangeClosed(1, film.layers()).mapToDouble(film::targetNs).toArray();
    double[] noise =
        Arrays.stream(ns)
            .map(each -> Math.hypot(OFF_TARGET, Math.hypot(USUAL_NOISE, TIMING_NS / each)))
            .toArray();
    return new Usual(ns, Map.of(), noise, noise, false);
  }

  /**
   * @param recent at least {@link #ENOUGH}
   */
  static Usual of(List<HeardSample> recent, HeardFilm film) {
    Map<Integer, double[]> lanes = new HashMap<>();
    int layers = film.layers();
    double[] layerNs = new double[layers];
    double[] noise = new double[layers];
    double[] meanNoise = new double[layers];
    for (int position = 1; position <= layers; position++) {
      Column column = new Column(recent, position);
      layerNs[position - 1] = column.middle();
      for (Map.Entry<Integer, double[]> lane : column.byLane.entrySet()) {
        if (lane.getValue().length >= ENOUGH) {
          lanes.computeIfAbsent(lane.getKey(), any -> filled(layers))[position - 1] =
              Middle.of(lane.getValue().clone());
        }
      }
      noise[position - 1] = Math.max(LEAST_NOISE, column.noise());
      meanNoise[position - 1] = Math.max(LEAST_NOISE / 2, column.meanNoise());
    }
    return new Usual(layerNs, lanes, noise, meanNoise, true);
  }

  private static double[] filled(int layers) {
    double[] none = new double[layers];
    Arrays.fill(none, Double.NaN);
    return none;
  }

  /** All that was read of one layer. */
  private static final class Column {
    private final Map<Integer, double[]> byLane = new HashMap<>();
    private final double[] means;

    private Column(List<HeardSample> recent, int position) {
      Map<Integer, List<Double>> lists = new HashMap<>();
      List<Double> sampleMeans = new ArrayList<>();
      for (HeardSample heard : recent) {
        double sum = 0;
        int count = 0;
        for (int lane = 0; lane < heard.lanes(); lane++) {
          double ns = heard.ns(position, lane);
          if (!Double.isNaN(ns)) {
            lists.computeIfAbsent(heard.sample().lane(lane), any -> new ArrayList<>()).add(ns);
            sum += ns;
            count++;
          }
        }
        if (count > 0) {
          sampleMeans.add(sum / count);
        }
      }
      lists.forEach(
          (lane, values) ->
              byLane.put(lane, values.stream().mapToDouble(Double::doubleValue).toArray()));
      means = sampleMeans.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double middle() {
      double[] all = byLane.values().stream().flatMapToDouble(Arrays::stream).toArray();
      return all.length == 0 ? Double.NaN : Middle.of(all);
    }

    /** Of single readings about the middle of their lane. */
    private double noise() {
      double[] distances =
          byLane.values().stream()
              .filter(values -> values.length > 1)
              .flatMapToDouble(Column::distances)
              .toArray();
      return distances.length == 0 ? USUAL_NOISE : Middle.deviation(distances);
    }

    private double meanNoise() {
      return means.length < 2 ? USUAL_NOISE : Middle.deviation(distances(means).toArray());
    }

    private static DoubleStream distances(double[] values) {
      double middle = Middle.of(values.clone());
      return Arrays.stream(values).map(value -> Math.log(value / middle));
    }
  }

  /** Whether there is something to compare every layer with. */
  boolean isKnown() {
    return Arrays.stream(layerNs).allMatch(ns -> ns > 0);
  }

  /** Whether it comes from recent samples, and so knows the lanes and the noise. */
  boolean isSettled() {
    return isSettled;
  }

  double ns(int position, int laneNumber) {
    double[] lane = laneNs.get(laneNumber);
    double ns = lane == null ? Double.NaN : lane[position - 1];
    return Double.isNaN(ns) ? layerNs[position - 1] : ns;
  }

  double[] nsAt(int laneNumber) {
    return IntStream.rangeClosed(1, layerNs.length)
        .mapToDouble(position -> ns(position, laneNumber))
        .toArray();
  }

  double layerNs(int position) {
    return layerNs[position - 1];
  }

  /** Relative standard deviation of a single reading. */
  double noise(int position) {
    return noise[position - 1];
  }

  double[] noises() {
    return noise.clone();
  }

  /** Relative standard deviation of a sample's mean. */
  double meanNoise(int position) {
    return meanNoise[position - 1];
  }
}
