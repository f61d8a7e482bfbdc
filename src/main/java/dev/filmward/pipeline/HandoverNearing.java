package dev.filmward.pipeline;

import dev.filmward.chart.Ewma;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.Board.LineState;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.rule.SeriesTests;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Layers whose moving average of means has gone at least two thirds of the way to its limit and is
 * not beyond it (common practice, no source). The average is that of {@link SeriesTests#AVERAGE},
 * from the last {@value #MEANS} means, which settle it. Stateless.
 */
final class HandoverNearing {
  private static final int MEANS = 60;
  private static final double NEAR = 2 / 3.0;

  private HandoverNearing() {}

  static List<Item> items(HandoverScope scope) {
    List<Item> nearing = new ArrayList<>();
    for (LineState line : scope.lines()) {
      Production production = new Production(line.line(), line.structure());
      for (Characteristic each : production.characteristics()) {
        average(scope, production.series(each))
            .filter(way -> Math.abs(way) >= NEAR && Math.abs(way) <= 1)
            .ifPresent(way -> nearing.add(item(line, each, way)));
      }
    }
    return nearing;
  }

  private static Item item(LineState line, Characteristic characteristic, double way) {
    return new Item(
        "nearing " + line.line() + " " + characteristic.position(),
        line.line(),
        characteristic.name(),
        way > 0 ? "towards thicker" : "towards thinner",
        String.format(
            Locale.ROOT,
            "its moving average is %.0f %% of the way to its limit",
            100 * Math.abs(way)),
        Optional.empty());
  }

  /** The average as a multiple of its limit; empty without limits or where they changed lately. */
  private static Optional<Double> average(HandoverScope scope, Series series) {
    List<LimitsVersion> versions = scope.tables().limits().of(series);
    Optional<LimitsVersion> held = SeriesJudge.inForce(versions, scope.board().now());
    Ewma average = new Ewma(SeriesTests.AVERAGE);
    Optional<Double> last = Optional.empty();
    for (FigureRow row : scope.tables().figures().before(series, scope.until(), MEANS)) {
      Optional<Subgroup> subgroup = row.subgroup();
      if (held.isPresent()
          && subgroup.isPresent()
          && !held.get().holdsFrom().isAfter(row.takenAt())) {
        last = Optional.of(average.advance(held.get().limits().plot(subgroup.get()).zMean()));
      }
    }
    return last.filter(Double::isFinite);
  }
}
