package dev.filmward.gauge.study;

/** Turns of phrase that messages about studies share. */
final class StudyWords {
  private static final int LONGEST = 60;

  private StudyWords() {}

  /** A name between quotation marks; cut if long. */
  static String quoted(String name) {
    return "\"" + (name.length() <= LONGEST ? name : name.substring(0, LONGEST) + "\u2026") + "\"";
  }

  static String trials(int count) {
    return count + (count == 1 ? " trial" : " trials");
  }
}
