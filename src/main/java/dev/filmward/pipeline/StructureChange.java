package dev.filmward.pipeline;

import java.util.OptionalDouble;

/**
 * One thing that differs between two versions of a structure.
 *
 * @param part of which part: {@code structure}, {@code layer}, {@code reported} or {@code total}
 * @param position of the layer or reported layer, from 1 in the version that has it; else 0
 * @param name of the layer or reported layer; else empty
 * @param what which of its properties by its key in a structures file, {@code average.lower} for
 *     one of the limits for averages; {@code added}, {@code removed} or {@code moved}
 */
public record StructureChange(
    String part, int position, String name, String what, Value was, Value is) {

  /**
   * A text, or a number (lengths in um), or nothing.
   *
   * @param text empty where there is none
   */
  public record Value(String text, OptionalDouble number) {
    public static final Value NONE = new Value("", OptionalDouble.empty());

    static Value of(String text) {
      return new Value(text, OptionalDouble.empty());
    }

    static Value of(OptionalDouble number) {
      return new Value("", number);
    }

    /** Whether two are the same to anybody who reads them: units come and go with rounding. */
    boolean isLike(Value other) {
      if (number.isPresent() != other.number.isPresent()) {
        return false;
      }
      double apart = Math.abs(number.orElse(0) - other.number.orElse(0));
      return text.equals(other.text) && apart <= 1e-9 * Math.abs(number.orElse(0));
    }
  }
}
