package dev.filmward.gauge.study;

import dev.filmward.gauge.calibration.ReferencePiece;
import java.time.LocalDate;
import java.util.List;

/**
 * What is measured where a study is of pieces of known thickness, as they were known when it was
 * planned. Immutable.
 *
 * @param kind not crossed
 * @param dates when a stability study measures, ascending; empty for other kinds
 */
public record KnownPieces(StudyKind kind, List<ReferencePiece> pieces, List<LocalDate> dates) {
  /** Limits from fewer dates say little about stability (common practice, no source). */
  public static final int LEAST_DATES = 20;

  private static final int MOST_DATES = 200;
  private static final int MOST_PIECES = 50;

  public KnownPieces {
    pieces = List.copyOf(pieces);
    dates = List.copyOf(dates);
    if (kind == StudyKind.CROSSED) {
      throw new IllegalArgumentException("a crossed study has marked spots, not known pieces");
    }
    if (kind == StudyKind.LINEARITY) {
      checkLinearity(pieces);
    } else if (pieces.size() != 1) {
      throw new IllegalArgumentException(
          "a study of " + kind.word() + " is of one reference piece, not " + pieces.size());
    }
    checkDates(kind, dates);
  }

  private static void checkLinearity(List<ReferencePiece> pieces) {
    if (pieces.size() > MOST_PIECES) {
      throw new IllegalArgumentException("at most " + MOST_PIECES + " reference pieces");
    }
    if (pieces.stream().mapToDouble(ReferencePiece::thicknessUm).distinct().count() < 2) {
      throw new IllegalArgumentException(
          "linearity takes reference pieces of at least two thicknesses, five are usual");
    }
  }

  private static void checkDates(StudyKind kind, List<LocalDate> dates) {
    if (kind != StudyKind.STABILITY) {
      if (!dates.isEmpty()) {
        throw new IllegalArgumentException("only a study of stability has dates");
      }
      return;
    }
    if (dates.size() < LEAST_DATES || dates.size() > MOST_DATES) {
      throw new IllegalArgumentException(
          "stability takes "
              + LEAST_DATES
              + " to "
              + MOST_DATES
              + " dates, not "
              + dates.size()
              + "; limits from fewer say little");
    }
    for (int i = 1; i < dates.size(); i++) {
      if (!dates.get(i - 1).isBefore(dates.get(i))) {
        throw new IllegalArgumentException(
            "the dates of a study of stability ascend; "
                + dates.get(i)
                + " does not come after "
                + dates.get(i - 1));
      }
    }
  }

  /** Their names, which are the parts of the plan. */
  List<String> names() {
    return pieces.stream().map(ReferencePiece::name).toList();
  }
}
