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
    Findings findings = find(history);
    List<Candidate> candidates = new Scoring(findings).candidates(signatures);
    return new Diagnosis(
        findings.observations(), candidates, Scoring.ambiguous(candidates), findings.notes());
  }

  static Findings find(FilmHistory history) {
    Findings findings = new Findings();
    new ReadingsLook(history).look(findings);
    FilmSeries series = new FilmSeries(history);
    if (series.size() < FilmHistory.FEWEST_BEFORE || series.alarm < LevelScan.FEWEST_BEFORE) {
      findings.note(
          "There are too few samples before the alarm to compare with: at least "
              + LevelScan.FEWEST_BEFORE
              + " whole ones are needed.");
      return findings;
    }
    new Looks(series, findings).look();
    return findings;
  }
}
