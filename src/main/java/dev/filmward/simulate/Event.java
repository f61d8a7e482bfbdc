package dev.filmward.simulate;

/**
 * Something that happens on the line. An event acts on samples by their index from 0, layers by
 * position from 1 and lanes by number from 1; several events multiply. Immutable, without state, so
 * that a story can be entered anywhere.
 */
sealed interface Event permits Step, Drift, ScreenBlinding, LaneOff, LostEcho {

  /** What the thickness is multiplied by; 1 where the event does not act. */
  double factor(int sample, int position, int lane);

  /** The chance, on top of the usual one, that a reading is not measured. */
  default double missing(int sample, int position, int lane) {
    return 0;
  }
}
