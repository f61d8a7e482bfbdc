package dev.filmward.rule;

import java.util.Arrays;

/** On which side of the centre line a point lies. */
public enum Side {
  HIGH("high"),
  LOW("low");

  private final String word;

  Side(String word) {
    this.word = word;
  }

  /** As written in files and addresses. */
  public String word() {
    return word;
  }

  /** The side of that name; {@link IllegalArgumentException} where there is none. */
  public static Side fromWord(String word) {
    return Arrays.stream(values())
        .filter(side -> side.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no side \"" + word + "\"; high or low"));
  }
}
