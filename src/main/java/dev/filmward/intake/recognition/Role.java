package dev.filmward.intake.recognition;

import dev.filmward.intake.Field;
import java.util.Locale;
import java.util.Optional;

/** What a column may be for. */
enum Role {
  TAKEN_AT(Field.TAKEN_AT),
  DATE(Field.TAKEN_AT),
  TIME(Field.TAKEN_AT),
  LINE(Field.LINE),
  STRUCTURE(Field.STRUCTURE),
  ROLL(Field.ROLL),
  SAMPLE(Field.SAMPLE),
  LANE(Field.LANE),
  LAYER(Field.LAYER),
  TEMPERATURE_C(Field.TEMPERATURE_C),
  /** A thickness; whose it is, other columns say. */
  THICKNESS(Field.THICKNESS),
  /** The thickness of one layer, or of one lane. */
  LAYER_THICKNESS(Field.LAYER_THICKNESS),
  /** The total, which is computed here. */
  TOTAL(Field.IGNORED),
  IGNORED(Field.IGNORED);

  private final Field field;

  Role(Field field) {
    this.field = field;
  }

  Field field() {
    return field;
  }

  /** As answers name it. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<Role> of(String word) {
    for (Role role : values()) {
      if (role.word().equals(word)) {
        return Optional.of(role);
      }
    }
    return Optional.empty();
  }
}
