package dev.filmward.gauge.screen;

import java.util.List;

/** One way to misread a film: what a gauge would export of it. Immutable. */
interface Misreading {
  Misread kind();

  /** Positions, from 1, whose readings are not of their layer. */
  List<Integer> positions();

  /**
   * What is exported of a film.
   *
   * @param filmNs times of flight of its layers
   * @param readNs what was read, for what the pattern leaves open; NaN where blank
   * @return times of flight by position; NaN where a blank is exported
   */
  double[] exportedNs(double[] filmNs, double[] readNs);

  /** How surprising it is before anything was read, in natural logarithms of odds. */
  double rarity();

  /** Whether it is of all lanes, since it is of the sample as a whole. */
  boolean isOfTheWholeSample();

  /** What happened, with positions, as the beginning of a sentence. */
  String words();
}
