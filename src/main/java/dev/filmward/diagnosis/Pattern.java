package dev.filmward.diagnosis;

/** The shape of a deviation over the layers and across the web. */
public enum Pattern {
  /** All layers together, or the total. */
  ALL_LAYERS,
  /** One layer, or the layers of one extruder. */
  SOME_LAYERS,
  /** Lanes apart from each other. */
  ACROSS_THE_WEB
}
