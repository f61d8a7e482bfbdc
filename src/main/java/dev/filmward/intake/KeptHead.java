package dev.filmward.intake;

import java.util.Optional;

/**
 * What is kept of a file so that a row of it can be read by itself: everything before its first
 * row, without the last line end, and the mapping it was read through. Immutable.
 *
 * @param text decoded, lines end with line feeds; at most 64 Ki characters
 * @param mapping as YAML, where there was one
 */
public record KeptHead(String text, Optional<String> mapping) {
  private static final int LONGEST = 64 * 1024;

  /** Empty where the text is longer than is kept. */
  static Optional<KeptHead> of(String text, Optional<String> mapping) {
    return text.length() > LONGEST ? Optional.empty() : Optional.of(new KeptHead(text, mapping));
  }
}
