package dev.filmward.diagnosis;

import java.util.List;

/**
 * Takes a film's history around an alarm, gives what changed and a ranked list of what may have
 * caused it, by comparing computed statistics with signatures. Immutable, safe for any threads.
 */
public final class DiagnosisEngine {
  /** Of the mean of the first samples, in standard deviations of one. */
  private static final double ALREADY_OFF = 2;

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
    noteReference(series, findings);
    new Looks(series, findings).look();
    return findings;
  }

  /** Layers that were off already when the history begins. */
  private static void noteReference(FilmSeries series, Findings findings) {
    for (LayerReference usual : series.history.reference()) {
      double sum = 0;
      for (int t = 0; t < FilmHistory.FEWEST_BEFORE; t++) {
        sum += series.level[t][usual.position() - 1];
      }
      double off = sum / FilmHistory.FEWEST_BEFORE;
      if (Math.abs(off) * usual.meanUm() > ALREADY_OFF * usual.sigmaUm()) {
        String name = series.structure.reported().get(usual.position() - 1).name();
        findings.note(
            name
                + " was off its reference by "
                + Numbers.signed(100 * off)
                + " % already when this history begins; that is not looked into.");
      }
    }
  }
}
