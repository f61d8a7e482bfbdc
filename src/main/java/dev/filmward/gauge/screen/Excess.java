package dev.filmward.gauge.screen;

import java.util.List;

/**
 * By how much the times of flight of one layer exceed what is usual, at the lanes where that can be
 * said. Immutable.
 */
final class Excess {
  private final List<Integer> lanes;
  private final double[] ns;
  private final double[] usualNs;
  private final double noise;

  private Excess(List<Integer> lanes, double[] ns, double[] usualNs, double noise) {
    this.lanes = lanes;
    this.ns = ns;
    this.usualNs = usualNs;
    this.noise = noise;
  }

  static Excess of(HeardSample heard, Usual usual, int position, List<Integer> lanes) {
    List<Integer> read =
        lanes.stream().filter(lane -> !Double.isNaN(heard.ns(position, lane))).toList();
    double[] usualNs =
        read.stream().mapToDouble(lane -> usual.ns(position, heard.sample().lane(lane))).toArray();
    double[] ns = new double[usualNs.length];
    for (int i = 0; i < ns.length; i++) {
      ns[i] = heard.ns(position, read.get(i)) - usualNs[i];
    }
    return new Excess(read, ns, usualNs, usual.noise(position));
  }

  /** Indexes of the lanes. */
  List<Integer> lanes() {
    return lanes;
  }

  /** The excess at the i-th of the lanes; negative where it is short. */
  double ns(int i) {
    return ns[i];
  }

  /** What is usual there. */
  double usualNs(int i) {
    return usualNs[i];
  }

  /** Relative standard deviation of a reading. */
  double noise() {
    return noise;
  }

  int count() {
    return ns.length;
  }

  double sd(int i) {
    return noise * usualNs[i];
  }

  /** Relative to what is usual. */
  double meanRatio() {
    double sum = 0;
    for (int i = 0; i < ns.length; i++) {
      sum += ns[i] / usualNs[i];
    }
    return sum / ns.length;
  }

  /** Squares about the mean ratio, in units of noise; chi-square where the layer moved as one. */
  double spread() {
    double ratio = meanRatio();
    double sum = 0;
    for (int i = 0; i < ns.length; i++) {
      double off = ns[i] - ratio * usualNs[i];
      sum += off * off / (sd(i) * sd(i));
    }
    return sum / Math.max(1, (1 + ratio) * (1 + ratio));
  }

  /** Relative deviation of the layer as a whole, in surprise. */
  double surprise() {
    return count() == 0
        ? 0
        : Surprise.of(Math.log1p(Math.max(-0.99, meanRatio())), noise / Math.sqrt(count()));
  }
}
