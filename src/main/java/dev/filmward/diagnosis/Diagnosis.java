package dev.filmward.diagnosis;

import java.util.List;

/**
 * What changed and why, as far as the readings tell. Where nothing stands out of the noise nothing
 * is named. A hint where to look first, no verdict. Immutable.
 *
 * @param changed what changed, clearest first
 * @param candidates all that were found, best first
 * @param ambiguous which of them cannot be told apart
 * @param notes what could not be looked at, and why
 */
public record Diagnosis(
    List<Observation> changed,
    List<Candidate> candidates,
    List<Ambiguity> ambiguous,
    List<String> notes) {
  /** How many candidates people are shown. */
  public static final int MOST_SHOWN = 3;

  public Diagnosis {
    changed = List.copyOf(changed);
    candidates = List.copyOf(candidates);
    ambiguous = List.copyOf(ambiguous);
    notes = List.copyOf(notes);
  }

  /** The best {@value #MOST_SHOWN}. */
  public List<Candidate> shown() {
    return candidates.subList(0, Math.min(MOST_SHOWN, candidates.size()));
  }
}
