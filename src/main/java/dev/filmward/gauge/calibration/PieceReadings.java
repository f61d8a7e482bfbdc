package dev.filmward.gauge.calibration;

import java.util.List;

/**
 * What a gauge read on a reference piece. Immutable.
 *
 * @param values thicknesses in um as the gauge showed them at the velocity before, or times of
 *     flight in ns; at least one
 */
public record PieceReadings(ReferencePiece piece, Kind kind, List<Double> values) {
  private static final int MOST = 1000;

  /** What a reading is. */
  public enum Kind {
    THICKNESS,
    TIME;

    /** As written in files and addresses. */
    public String word() {
      return this == THICKNESS ? "thickness" : "time";
    }

    public static Kind fromWord(String word) {
      for (Kind kind : values()) {
        if (kind.word().equals(word)) {
          return kind;
        }
      }
      throw new IllegalArgumentException(
          "readings are of a \"thickness\" or a \"time\" of flight, not \"" + word + "\"");
    }
  }

  public PieceReadings {
    values = List.copyOf(values);
    if (values.isEmpty() || values.size() > MOST) {
      throw new IllegalArgumentException(
          "piece \"" + piece.name() + "\" needs 1 to " + MOST + " readings");
    }
    for (double value : values) {
      if (!(value > 0) || !Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "piece \"" + piece.name() + "\": a reading is above 0, not " + value);
      }
    }
  }

  /** Times of flight, ns. */
  double[] flightsNs(Velocity before) {
    return values.stream()
        .mapToDouble(value -> kind == Kind.TIME ? value : before.flightNs(value))
        .toArray();
  }
}
