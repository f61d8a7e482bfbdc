package dev.filmward.diagnosis;

import java.util.List;

/**
 * Candidates that the readings at hand cannot tell apart.
 *
 * @param codes of their signatures, at least two
 * @param words why, and what would settle it
 */
public record Ambiguity(List<String> codes, String words) {
  public Ambiguity {
    codes = List.copyOf(codes);
    if (codes.size() < 2) {
      throw new IllegalArgumentException("two or more are ambiguous, not " + codes);
    }
  }
}
