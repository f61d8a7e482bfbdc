package dev.filmward.gauge.study;

import dev.filmward.stats.WeightedLine;
import java.util.List;
import java.util.Locale;

/** What the line of bias against thickness amounts to. */
public enum LinearityVerdict {
  /** The band of the line has 0 in it on every piece. */
  RIGHT,
  /** Off, and no sign that it goes with the thickness. */
  OFF,
  /** How far it is off goes with the thickness. */
  WITH_THICKNESS;

  /** The rules behind it, for people. */
  public static final String SOURCE =
      "AIAG, Measurement Systems Analysis, 4th edition, chapter III B: the gauge is right where the"
          + " line of bias 0 lies within the 95 % band of the regression; the slope is tested at 5"
          + " %";

  private static final double NOTICED_BELOW = 0.05;

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static LinearityVerdict of(WeightedLine line, List<ReferencePiece> pieces) {
    if (line.p(line.slopeEstimate()) < NOTICED_BELOW) {
      return WITH_THICKNESS;
    }
    return pieces.stream().anyMatch(piece -> isOff(line, piece.referenceUm())) ? OFF : RIGHT;
  }

  private static boolean isOff(WeightedLine line, double um) {
    WeightedLine.Estimate there = line.at(um);
    return Math.abs(there.value()) > line.halfWidth(there, ReferencePiece.CONFIDENCE);
  }
}
