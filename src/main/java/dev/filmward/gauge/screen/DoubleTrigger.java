package dev.filmward.gauge.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An echo that was counted twice: a layer is cut into a thin part and the rest, the layers behind
 * move down one place, and the last one is lost. Immutable.
 *
 * @param layers of the film
 * @param in position of the layer that is cut
 * @param thin whether the thin part is read before or behind the rest
 */
record DoubleTrigger(int layers, int in, Thin thin) implements Misreading {

  enum Thin {
    FIRST,
    SECOND
  }

  /** All ways that move something: in the last layer nothing is behind. */
  static List<Misreading> all(int layers) {
    List<Misreading> ways = new ArrayList<>();
    for (int in = 1; in < layers; in++) {
      ways.add(new DoubleTrigger(layers, in, Thin.FIRST));
      ways.add(new DoubleTrigger(layers, in, Thin.SECOND));
    }
    return ways;
  }

  @Override
  public Misread kind() {
    return Misread.DOUBLE_TRIGGER;
  }

  @Override
  public List<Integer> positions() {
    return IntStream.rangeClosed(in, layers).boxed().toList();
  }

  @Override
  public double[] exportedNs(double[] filmNs, double[] readNs) {
    double[] exported = filmNs.clone();
    double part = thinPart(filmNs, readNs);
    exported[in - 1] = thin == Thin.FIRST ? part : filmNs[in - 1] - part;
    exported[in] = filmNs[in - 1] - exported[in - 1];
    System.arraycopy(filmNs, in, exported, in + 1, filmNs.length - in - 1);
    return exported;
  }

  /** As read, where that is at most half of the layer. */
  private double thinPart(double[] filmNs, double[] readNs) {
    double read = readNs[thin == Thin.FIRST ? in - 1 : in];
    double half = filmNs[in - 1] / 2;
    return read > 0 && read < half ? read : half;
  }

  /** A part whose size is not known beforehand. */
  @Override
  public double rarity() {
    return 3;
  }

  @Override
  public boolean isOfTheWholeSample() {
    return false;
  }

  @Override
  public String words() {
    return "Layers "
        + in
        + " and "
        + (in + 1)
        + " together read like layer "
        + in
        + " alone in time of flight, the next ones moved down one place, and the last one is lost";
  }
}
