package dev.filmward.simulate;

import java.util.Locale;

/**
 * How rolls and samples are named: a new roll every so many samples, rolls numbered from 1 with two
 * digits or more, samples from 1 with three digits or more.
 *
 * @param prefix of a roll's name
 */
record Rolls(String prefix, int samplesPerRoll) {

  Rolls {
    if (!(samplesPerRoll >= 1)) {
      throw new IllegalArgumentException("a roll has at least one sample, not " + samplesPerRoll);
    }
  }

  String roll(int sample) {
    return String.format(Locale.ROOT, "%s%02d", prefix, sample / samplesPerRoll + 1);
  }

  static String sample(int sample) {
    return String.format(Locale.ROOT, "S%03d", sample + 1);
  }
}
