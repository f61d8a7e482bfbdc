package dev.filmward.intake.recognition;

import dev.filmward.intake.TimePattern;
import dev.filmward.intake.Words;
import dev.filmward.intake.recognition.Question.Choice;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Asks in words which of some patterns is meant. Stateless. */
final class TimeQuestion {
  private static final DateTimeFormatter IN_WORDS =
      DateTimeFormatter.ofPattern("d MMMM uuuu, H:mm", Locale.UK);

  private TimeQuestion() {}

  static Question of(TimeGuess guess) {
    if (guess.patterns().isEmpty()) {
      return new Question(
          "pattern",
          "How are the times written? No pattern reads "
              + Words.quoted(guess.example())
              + ". Write one with the letters yyyy MM dd HH mm ss, as in dd.MM.yyyy HH:mm.",
          List.of());
    }
    List<Choice> choices =
        guess.patterns().stream().map(pattern -> choice(pattern, guess.example())).toList();
    return new Question(
        "pattern",
        "Which day is " + Words.quoted(guess.example()) + "? No row of the file tells.",
        choices);
  }

  private static Choice choice(String pattern, String example) {
    String words =
        TimePattern.of(pattern)
            .read(example)
            .map(moment -> IN_WORDS.format(moment.local()))
            .orElse(pattern);
    return new Choice(pattern, words + " (" + pattern + ")");
  }
}
