package dev.filmward.diagnosis;

import java.util.Locale;

/** Says in words what was found. */
final class Sentences {
  private Sentences() {}

  /** One condition's evidence. */
  static String of(Condition condition, Finding found) {
    Statistic statistic = condition.statistic();
    String said =
        statistic.unit().equals("part")
            ? value(statistic, found.value()) + " " + statistic.meaning()
            : upper(statistic.meaning()) + ": " + value(statistic, found.value());
    String wanted = condition.comparison().words() + " " + value(statistic, condition.threshold());
    String role = condition.role() == Condition.Role.NEEDED ? "needed: " : "speaks for it: ";
    return said
        + " ("
        + role
        + wanted
        + (condition.isMet(found.value()) ? ")." : ", which it is not).");
  }

  /** A further condition of a statistic that was told of. */
  static String again(Condition condition, Finding found) {
    boolean isMet = condition.isMet(found.value());
    return (isMet ? "That is also " : "That is not ")
        + condition.comparison().words()
        + " "
        + value(condition.statistic(), condition.threshold())
        + (isMet ? ", which speaks for it." : ", which would speak for it.");
  }

  private static String value(Statistic statistic, double value) {
    return switch (statistic.unit()) {
      case "part" -> Numbers.of(100 * value) + " %";
      case "z" -> Numbers.of(value) + " standard errors";
      case "" -> Numbers.of(value);
      case "0 or 1" -> value == 0 ? "no" : "yes";
      case "probability" -> "probability " + Numbers.of(value);
      default -> Numbers.of(value) + " " + statistic.unit();
    };
  }

  static String upper(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
