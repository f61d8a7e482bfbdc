package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A heading and what it may mean. Immutable.
 *
 * @param number of the column, from 1
 * @param text as it stands in the file, trimmed
 */
record Heading(int number, String text, Meaning meaning) {

  static Heading of(int number, String text) {
    return new Heading(number, text, Meaning.of(text));
  }

  /** Whether it says something to us, wherever it stands. */
  boolean isKnown() {
    return meaning instanceof Meaning.Plain || isThickness() || meaning.length().isPresent();
  }

  boolean is(Field field) {
    return meaning instanceof Meaning.Plain plain && plain.field() == field;
  }

  /** Whether it is of a thickness in some unit, or in none; {@code thickness_note} is not. */
  boolean isThickness() {
    return meaning instanceof Meaning.Thickness thickness
        && (thickness.unit().isEmpty() || meaning.length().isPresent());
  }

  /** The column, where it is not read as a thickness. */
  Column plain() {
    Field field = meaning instanceof Meaning.Plain plain ? plain.field() : Field.IGNORED;
    return new Column(number, text, field, Optional.empty(), OptionalInt.empty(), Optional.empty());
  }

  /** The column as the thickness of the long layout, if there is a unit. */
  Optional<Column> thickness() {
    return meaning.length().map(unit -> column(Field.THICKNESS, unit, OptionalInt.empty(), ""));
  }

  /** The column as the thickness of a layer, if there is a unit. */
  Optional<Column> layerAt(int position) {
    return meaning
        .length()
        .map(unit -> column(Field.LAYER_THICKNESS, unit, OptionalInt.of(position), ""));
  }

  /** The column as the thickness of a layer, if there is a unit. */
  Optional<Column> layerNamed(String name) {
    return meaning
        .length()
        .map(unit -> column(Field.LAYER_THICKNESS, unit, OptionalInt.empty(), name));
  }

  /** Why it cannot be read as a length. */
  String withoutUnit() {
    return Words.quoted(text)
        + " does not say its unit; write um, \u00b5m, mm, mil or in, as in thickness_um,"
        + " layer_1_um or Barrier [um]";
  }

  private Column column(Field field, LengthUnit unit, OptionalInt position, String layer) {
    Optional<String> name = Optional.of(layer).filter(given -> !given.isEmpty());
    return new Column(number, text, field, Optional.of(unit), position, name);
  }
}
