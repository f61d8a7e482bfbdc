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
    Structure structure =
        plant
            .structures()
            .find(address.structure())
            .orElseThrow(
                () -> new NoSuchElementException("no structure \"" + address.structure() + "\""));
    Characteristic characteristic = SeriesReader.characteristic(structure, address);
    return plant
        .store()
        .read(
            tables -> {
              Tally one = tally(tables, structure, characteristic, first);
              Tally other = tally(tables, structure, characteristic, second);
              return new SpanComparison(
                  one.summary(structure, characteristic),
                  other.summary(structure, characteristic),
                  one.side().flatMap(a -> other.side().map(b -> TwoSpans.of(a, b))));
            });
  }

  private static Tally tally(
      Tables tables, Structure structure, Characteristic characteristic, Side side) {
    Series series = new Series(side.line(), structure.code(), characteristic.position());
    FigureColumns columns = tables.figures().columns(series, side.span());
    Tally tally = new Tally();
    for (int i = 0; i < columns.count(); i++) {
      tally.samples++;
      if (columns.size(i) > 0) {
        tally.add(columns, i);
      }
    }
    return tally;
  }

  private static final class Tally {
    private final SeriesFigures figures = new SeriesFigures();
    private final Moments means = new Moments();
    private final Autocorrelation alike = new Autocorrelation(1);
    private double withinSquares;
    private double withinDegrees;
    private long samples;

    private void add(FigureColumns columns, int i) {
      figures.add(columns.size(i), columns.mean(i), columns.range(i), columns.sumOfSquares(i));
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

    private SeriesView.Summary summary(Structure structure, Characteristic characteristic) {
      return SeriesReader.summary(samples, figures, structure.spec(characteristic));
    }
  }
}
