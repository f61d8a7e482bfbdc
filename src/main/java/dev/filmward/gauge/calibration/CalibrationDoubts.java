package dev.filmward.gauge.calibration;

import dev.filmward.stats.ChiSquare;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person should look at before a calibration is believed, in sentences. Stateless.
 *
 * <p>Fewer than {@value #FEW} readings of a piece are few (common practice, no source); the lack of
 * fit is a chi-square test at 5 percent.
 */
public final class CalibrationDoubts {
  static final int FEW = 5;
  private static final double LEVEL = 0.05;
  private static final double MUCH = 0.01;

  private CalibrationDoubts() {}

  /**
   * Lists them.
   *
   * @param resin of the layer, in words; may be empty
   */
  public static List<String> of(FittedVelocity found, List<PieceReadings> pieces, String resin) {
    List<String> doubts = new ArrayList<>();
    for (PieceReadings each : pieces) {
      addFew(doubts, each);
      addOtherResin(doubts, each.piece(), resin);
    }
    addRange(doubts, found, resin);
    addFit(doubts, found, pieces.size());
    if (found.relative() > MUCH) {
      doubts.add(
          words(
              "The velocity is only known to %.1f %% (one standard uncertainty); a thicker piece"
                  + " or one that is better known says more.",
              100 * found.relative()));
    }
    return List.copyOf(doubts);
  }

  /** The chance of a misfit like this one, where it can be told. */
  public static OptionalDouble chance(FittedVelocity found) {
    return found.chiSquare().isPresent() && found.degrees() > 0
        ? OptionalDouble.of(new ChiSquare(found.degrees()).above(found.chiSquare().getAsDouble()))
        : OptionalDouble.empty();
  }

  private static void addFew(List<String> doubts, PieceReadings each) {
    int readings = each.values().size();
    if (readings < FEW) {
      doubts.add(
          words(
              "Only %d %s of piece \"%s\"; take at least %d, lifting the probe in between.",
              readings, readings == 1 ? "reading" : "readings", each.piece().name(), FEW));
    }
    if (each.piece().expandedUm() == 0) {
      doubts.add(
          words(
              "No uncertainty is stated for piece \"%s\", so that of the velocity is too small.",
              each.piece().name()));
    }
  }

  private static void addOtherResin(List<String> doubts, ReferencePiece piece, String resin) {
    Optional<ResinRange> wanted = ResinRange.of(resin);
    Optional<ResinRange> given = ResinRange.of(piece.material());
    if (wanted.isPresent() && given.isPresent() && !wanted.equals(given)) {
      doubts.add(
          words(
              "Piece \"%s\" is of %s and the layer of %s; a velocity belongs to its resin.",
              piece.name(), piece.material(), resin));
    }
  }

  private static void addRange(List<String> doubts, FittedVelocity found, String resin) {
    ResinRange.of(resin)
        .filter(range -> !range.contains(found.velocity().mps()))
        .ifPresent(
            range ->
                doubts.add(
                    words(
                        "%.0f m/s is outside what %s usually has (%.0f to %.0f m/s at room"
                            + " temperature); look at the piece, its thickness and the echoes.",
                        found.velocity().mps(), resin, range.leastMps(), range.greatestMps())));
  }

  private static void addFit(List<String> doubts, FittedVelocity found, int pieces) {
    OptionalDouble chance = chance(found);
    if (chance.isPresent() && chance.getAsDouble() < LEVEL) {
      doubts.add(
          words(
              "The pieces do not lie on one line within their uncertainty (chi-square %.1f with %d"
                  + " degrees of freedom, chance %.2g): one of them is not what it is taken for,"
                  + " or its echo was not the right one.",
              found.chiSquare().getAsDouble(), found.degrees(), chance.getAsDouble()));
    }
    if (pieces == 2) {
      doubts.add("Two pieces always lie on a line; a third one would tell whether it is one.");
    }
  }

  private static String words(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
