package dev.filmward.diagnosis;

import java.util.List;

/**
 * Takes a film's history around an alarm, gives what changed and a ranked list of what may have
 * caused it, by comparing computed statistics with signatures. Immutable, safe for any threads.
 */
public final class DiagnosisEngine {
  private final Signatures signatures;

  public DiagnosisEngine(Signatures signatures) {
    this.signatures = signatures;
  }

  /** What is looked for. */
  public Signatures signatures() {
    return signatures;
  }

  public Diagnosis diagnose(FilmHistory history) {
    return new Diagnosis(List.of(), List.of(), List.of(), List.of());
  }
}
