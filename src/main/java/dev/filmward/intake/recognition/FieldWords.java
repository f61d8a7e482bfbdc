package dev.filmward.intake.recognition;

import dev.filmward.intake.Field;

/** What fields are called in questions. Stateless. */
final class FieldWords {
  private FieldWords() {}

  static String of(Field field) {
    return switch (field) {
      case TAKEN_AT -> "time";
      case TEMPERATURE_C -> "temperature";
      default -> field.heading();
    };
  }

  /** What a person is asked where the file does not say a field. */
  static String ask(Field field) {
    return switch (field) {
      case LINE -> "On which line were these films made?";
      case STRUCTURE -> "Which structure is it?";
      case ROLL -> "Which roll is it? Write - where rolls are not told apart.";
      case LAYER -> "Which layer are the thicknesses of?";
      case TAKEN_AT -> "When were the samples taken? Write it like 2026-11-25 09:30.";
      default -> "What shall stand there for all rows?";
    };
  }
}
