package dev.filmward.diagnosis;

import java.util.Arrays;
import java.util.Locale;

/** The shape of a deviation over the layers and across the web. */
public enum Pattern {
  /** All layers together, or the total. */
  ALL_LAYERS("all layers"),
  /** One layer, or the layers of one extruder. */
  SOME_LAYERS("some layers"),
  /** Lanes apart from each other. */
  ACROSS_THE_WEB("across the web");

  private final String words;

  Pattern(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The pattern of that word; {@link IllegalArgumentException} where there is none. */
  public static Pattern fromWord(String word) {
    return Arrays.stream(values())
        .filter(pattern -> pattern.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no pattern \"" + word + "\""));
  }
}
