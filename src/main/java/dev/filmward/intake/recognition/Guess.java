package dev.filmward.intake.recognition;

import dev.filmward.film.LengthUnit;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a column is taken for, and why. Immutable.
 *
 * @param index of the column, from 0
 * @param layer position or name, of a thickness whose layer the column says; {@code ?} where that
 *     must be asked
 * @param lane of a thickness whose lane the column says
 * @param unit of a length
 */
record Guess(
    int index,
    Role role,
    Optional<String> layer,
    OptionalInt lane,
    Optional<LengthUnit> unit,
    String reason) {

  static Guess of(int index, Role role, Optional<LengthUnit> unit, String reason) {
    return new Guess(index, role, Optional.empty(), OptionalInt.empty(), unit, reason);
  }

  boolean isValue() {
    return role == Role.THICKNESS || role == Role.LAYER_THICKNESS;
  }

  Guess as(Role other, String why) {
    return new Guess(index, other, layer, lane, unit, why);
  }

  /** As answers write it: {@code layer 2}, {@code lane 3}, {@code layer 2 lane 3}, {@code roll}. */
  String meaning() {
    if (role != Role.LAYER_THICKNESS) {
      return role == Role.TOTAL ? Role.IGNORED.word() : role.word();
    }
    String laneWords = lane.isPresent() ? "lane " + lane.getAsInt() : "";
    return (layer.map(name -> "layer " + name).orElse("") + " " + laneWords).strip();
  }
}
