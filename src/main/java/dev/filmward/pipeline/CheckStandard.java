package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.chart.IndividualsBaseline;
import dev.filmward.chart.IndividualsLimits;
import dev.filmward.gauge.study.ReferencePiece;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether a gauge stays the same over time: the readings of one check standard, in the order in
 * which they were taken, on an individuals and moving range chart whose limits come from
 * themselves. Immutable.
 *
 * @param value limits of a reading, um
 * @param movingRange limits of the distance of neighbours, um
 * @param beyond indices from 0 of readings that lie beyond their limits, or jump beyond those of
 *     neighbours
 */
public record CheckStandard(Band value, Band movingRange, List<Integer> beyond) {
  /** Fewer readings say little about stability (common practice, no source). */
  public static final int LEAST_READINGS = 20;

  public CheckStandard {
    beyond = List.copyOf(beyond);
  }

  /** Empty for fewer than 20 readings, or where none ever differs from the one before. */
  public static Optional<CheckStandard> of(ReferencePiece piece) {
    IndividualsBaseline baseline = new IndividualsBaseline();
    piece.um().forEach(baseline::add);
    return baseline
        .limits()
        .filter(limits -> piece.um().size() >= LEAST_READINGS && limits.sigma() > 0)
        .map(limits -> on(limits, piece.um()));
  }

  private static CheckStandard on(IndividualsLimits limits, List<Double> um) {
    List<Integer> beyond = new ArrayList<>();
    for (int i = 0; i < um.size(); i++) {
      double jump = i == 0 ? 0 : Math.abs(um.get(i) - um.get(i - 1));
      boolean isBeyond =
          um.get(i) < limits.value().lower()
              || um.get(i) > limits.value().upper()
              || jump > limits.movingRange().upper();
      if (isBeyond) {
        beyond.add(i);
      }
    }
    return new CheckStandard(limits.value(), limits.movingRange(), beyond);
  }
}
