package dev.filmward.pipeline;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What a person does about neighbouring samples that are alike, where limits are frozen all the
 * same. It is kept beside the limits; nothing changes by itself.
 */
public enum AutocorrelationRemedy {
  /** Samples are taken further apart from now on, and new limits made from those. */
  SAMPLE_LESS_OFTEN,
  /** Only means beyond their limits raise alarms; tests of runs are turned off. */
  WITHOUT_RUNS,
  /** Alarms are checked against the residuals, which are independent. */
  RESIDUALS,
  /** The false alarms are known and taken. */
  ACCEPT;

  /** As written in requests and the database. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The remedy of that word; {@link IllegalArgumentException} where there is none. */
  public static AutocorrelationRemedy fromWord(String word) {
    return Arrays.stream(values())
        .filter(remedy -> remedy.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "\"autocorrelation\" is one of " + words() + ", not \"" + word + "\""));
  }

  static String words() {
    List<String> words = Arrays.stream(values()).map(AutocorrelationRemedy::word).toList();
    return String.join(", ", words);
  }
}
