package dev.filmward.simulate;

import java.util.List;
import java.util.Locale;

/**
 * An alarm that a sample run must raise.
 *
 * @param layers every reported layer that it is about, and {@code Total} where the total is one of
 *     them; each goes out of control for the first time within the samples that follow
 * @param firstSampleFrom the earliest sample at which it may open
 * @param firstSampleTo the latest one
 */
record ExpectedAlarm(List<String> layers, Side side, String firstSampleFrom, String firstSampleTo) {

  ExpectedAlarm {
    layers = List.copyOf(layers);
  }

  /** Which way the layers go: the mean up or down, or the range up. */
  enum Side {
    HIGH,
    LOW,
    SPREAD;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
