package dev.filmward.alarm;

/** What a roll is known by. */
public record RollKey(String line, String structure, String roll) {
  /** As people name it. */
  public String words() {
    return "roll " + roll + ", " + line + ", " + structure;
  }
}
