package dev.filmward.intake.recognition;

import java.util.List;

/**
 * What only a person can know of a file. Immutable.
 *
 * @param key under which it is answered
 * @param words the question
 * @param choices among which the answer is; empty where it is a text of the person's own
 */
public record Question(String key, String words, List<Choice> choices) {
  public Question {
    choices = List.copyOf(choices);
  }

  /**
   * An answer to choose.
   *
   * @param value as it is given back
   * @param words what it means
   */
  public record Choice(String value, String words) {}
}
