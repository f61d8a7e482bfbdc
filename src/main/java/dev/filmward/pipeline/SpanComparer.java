package dev.filmward.pipeline;

import dev.filmward.capability.EffectiveSize;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.drift.TwoSpans;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.stats.Moments;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.util.NoSuchElementException;
import java.util.Optional;

/** Reads two spans of charted samples and compares them. Thread-safe. */
public final class SpanComparer {
  /** With fewer samples in a span nothing is said about a difference. */
  static final int FEWEST = 8;

  private final Plant plant;

  public SpanComparer(Plant plant) {
    this.plant = plant;
  }

  /** Which samples: of a line, in a span of time. */
  public record Side(String line, Span span) {}

  /**
   * Compares.
   *
   * @param address the characteristic; its line is that of the first side
   * @throws NoSuchElementException if there is no such structure or layer
   */
  public SpanComparison compare(SeriesReader.Address address, Side first, Side second) {
    SeriesReader.Subject subject = address.in(plant);
    Structure structure = subject.structure();
    Characteristic characteristic = subject.characteristic();
    SpecTimes asked = subject.asked();
    return plant
        .store()
        .read(
            tables -> {
              Tally one = new Tally(tables, series(first, structure, characteristic), first.span());
              Tally other =
                  new Tally(tables, series(second, structure, characteristic), second.span());
              return new SpanComparison(
                  one.summary(asked),
                  other.summary(asked),
                  one.side().flatMap(a -> other.side().map(b -> TwoSpans.of(a, b))));
            });
  }

  private static Series series(Side side, Structure structure, Characteristic characteristic) {
    return new Series(side.line(), structure.code(), characteristic.position());
  }

  private static final class Tally {
    private final FigureColumns columns;
    private final Moments means = new Moments();
    private final Autocorrelation alike = new Autocorrelation(1);
    private double withinSquares;
    private double withinDegrees;

    private Tally(Tables tables, Series series, Span span) {
      columns = tables.figures().columns(series, span);
      for (int i = 0; i < columns.count(); i++) {
        if (columns.size(i) > 0) {
          add(i);
        }
      }
    }

    private void add(int i) {
      means.add(columns.mean(i));
      alike.add(columns.mean(i));
      withinSquares += columns.sumOfSquares(i);
      withinDegrees += columns.size(i) - 1;
    }

    private Optional<TwoSpans.Side> side() {
      if (means.count() < FEWEST) {
        return Optional.empty();
      }
      double worth = EffectiveSize.of(means.count(), alike.lag1()).forMean();
      double deviation = means.standardDeviation().orElse(0);
      return Optional.of(
          new TwoSpans.Side(
              Math.max(2, worth),
              means.mean(),
              deviation * deviation,
              withinDegrees,
              withinDegrees > 0 ? withinSquares / withinDegrees : 0));
    }

    private SeriesView.Summary summary(SpecTimes asked) {
      return AskedFigures.of(columns, asked).summary(columns.count());
    }
  }
}
