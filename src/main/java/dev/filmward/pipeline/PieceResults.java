package dev.filmward.pipeline;

import dev.filmward.gauge.study.KnownPieces;
import dev.filmward.gauge.study.Linearity;
import dev.filmward.gauge.study.Linearity.Weighting;
import dev.filmward.gauge.study.ReferencePiece;
import dev.filmward.gauge.study.ReferenceReadings;
import dev.filmward.gauge.study.StudyKind;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyReading;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.intake.Words;
import dev.filmward.pipeline.StudyDesk.Cell;
import dev.filmward.pipeline.StudyDesk.Look;
import dev.filmward.pipeline.StudyStability.Dated;
import dev.filmward.store.StoredStudy.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a study of known pieces comes to. Bias and linearity are told when all readings are there,
 * so that nobody measures towards a result; stability as it grows. Immutable.
 *
 * @param references the readings, as the command takes them; empty until something is told of them
 * @param stability empty but for stability
 * @param reasons why something is not told, for people
 */
public record PieceResults(
    ReferenceReadings references,
    List<ReferencePiece> pieces,
    Optional<Linearity> linearity,
    Optional<StudyStability> stability,
    List<String> reasons) {
  public PieceResults {
    pieces = List.copyOf(pieces);
    reasons = List.copyOf(reasons);
  }

  /** Of a study that is not crossed. */
  public static PieceResults of(Look look) {
    StudyPlan plan = look.study().plan();
    KnownPieces known = plan.known().orElseThrow();
    List<String> reasons = new ArrayList<>();
    if (look.missing() > 0) {
      reasons.add(
          Words.count(look.missing(), "reading")
              + " of "
              + plan.readings()
              + (look.missing() == 1 ? " is missing" : " are missing"));
    }
    ReferenceReadings references =
        look.missing() > 0 ? new ReferenceReadings() : readings(look, known);
    List<ReferencePiece> pieces = references.pieces(plan.layers().get(0).name());
    for (ReferencePiece piece : pieces) {
      if (!piece.hasSpread()) {
        reasons.add(
            "readings of piece "
                + Words.quoted(piece.name())
                + " never differ, so there is no test; measure again with more digits");
      }
    }
    boolean isLine =
        known.kind() == StudyKind.LINEARITY && pieces.stream().anyMatch(ReferencePiece::hasSpread);
    return new PieceResults(
        references,
        pieces,
        isLine ? Linearity.of(pieces, Weighting.ALIKE) : Optional.empty(),
        known.kind() == StudyKind.STABILITY
            ? Optional.of(StudyStability.of(plan.perDate(), dated(look, known)))
            : Optional.empty(),
        reasons);
  }

  /** Piece by piece in the order of trials. */
  private static ReferenceReadings readings(Look look, KnownPieces known) {
    StudyPlan plan = look.study().plan();
    ReferenceReadings readings = new ReferenceReadings();
    for (var piece : known.pieces()) {
      for (int trial = 1; trial <= plan.trials(); trial++) {
        for (String operator : plan.operators()) {
          StudyStep step = new StudyStep(piece.name(), operator, trial);
          String layer = plan.layers().get(0).name();
          @Nullable Entry entry = look.entries().get(new Cell(step, layer));
          if (entry != null) {
            readings.add(
                new StudyReading(step.part(), operator, String.valueOf(trial), layer, entry.um()),
                piece.thicknessUm());
          }
        }
      }
    }
    return readings;
  }

  /** Dates that have all their readings. */
  private static List<Dated> dated(Look look, KnownPieces known) {
    StudyPlan plan = look.study().plan();
    List<Dated> dated = new ArrayList<>();
    for (int at = 0; at < known.dates().size(); at++) {
      List<Double> um = new ArrayList<>();
      for (int i = 1; i <= plan.perDate(); i++) {
        StudyStep step =
            new StudyStep(plan.parts().get(0), plan.operators().get(0), at * plan.perDate() + i);
        @Nullable Entry entry = look.entries().get(new Cell(step, plan.layers().get(0).name()));
        if (entry != null) {
          um.add(entry.um());
        }
      }
      if (um.size() == plan.perDate()) {
        dated.add(new Dated(known.dates().get(at), um));
      }
    }
    return dated;
  }
}
