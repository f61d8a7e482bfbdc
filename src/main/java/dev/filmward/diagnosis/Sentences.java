package dev.filmward.diagnosis;

import java.util.Locale;

/** Says in words what was found. */
final class Sentences {
  private Sentences() {}

  /** One condition's evidence. */
  static String of(Condition condition, Finding found) {
    Statistic statistic = condition.statistic();
    String unit = statistic.unit();
    String words = upper(statistic.meaning()) + ": " + Numbers.of(found.value());
    if (!unit.isEmpty() && !unit.equals("part") && !unit.equals("z")) {
      words += " " + unit;
    }
    return words
        + (condition.isMet(found.value()) ? " (" : " (not ")
        + condition.comparison().words()
        + " "
        + Numbers.of(condition.threshold())
        + ")";
  }

  static String upper(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
