package dev.filmward.diagnosis;

import java.util.List;
import java.util.Optional;

/**
 * A signature that was found, and why.
 *
 * @param score from 0 to 1: the weights of its conditions, as far as they are met, over those of
 *     all that could be computed
 * @param positions reported layers that it is about, from 1; empty where it is all of them
 * @param lanes that it is about, as the gauge numbers them; empty where it is all of them
 * @param evidence one for each condition that could be computed, in the order of the signature
 */
public record Candidate(
    Signature signature,
    double score,
    List<Integer> positions,
    List<Integer> lanes,
    Optional<Since> since,
    List<Evidence> evidence) {
  public Candidate {
    positions = List.copyOf(positions);
    lanes = List.copyOf(lanes);
    evidence = List.copyOf(evidence);
    if (!(score >= 0 && score <= 1)) {
      throw new IllegalArgumentException("a score is from 0 to 1, not " + score);
    }
  }
}
