package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SpecLimits;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * Reads what a span of one series shows beside its means, of the samples that are charted.
 * Thread-safe.
 */
public final class LayerLookReader {
  private static final int MOST_COLUMNS = 2000;

  private final Plant plant;

  public LayerLookReader(Plant plant) {
    this.plant = plant;
  }

  /**
   * Reads a span of time.
   *
   * @param columns so many columns of lanes at most, at least 1
   * @throws NoSuchElementException if there is no such structure or layer
   */
  public LayerLook read(SeriesReader.Address address, Span span, int columns) {
    SeriesReader.Subject subject = address.in(plant);
    Production production = new Production(address.line(), subject.structure());
    return plant
        .store()
        .read(
            tables ->
                new Look(tables, production, subject.characteristic(), subject.asked())
                    .read(span, Math.max(1, Math.min(columns, MOST_COLUMNS))));
  }

  private record Look(
      Tables tables, Production production, Characteristic characteristic, SpecTimes asked) {
    private LayerLook read(Span span, int columns) {
      FigureColumns figures = tables.figures().columns(production.series(characteristic), span);
      SpecLimits spec = production.structure().spec(characteristic);
      LaneGrid grid =
          new LaneGrid(characteristic, Math.max(1, (figures.count() + columns - 1) / columns));
      ReadingSpread spread = new ReadingSpread(characteristic, asked);
      Charted charted = Charted.asKept(tables);
      tables
          .samples()
          .within(
              production.line(),
              production.structure().code(),
              span,
              stored -> {
                if (production.hasLayersOf(stored.sample())) {
                  charted.of(stored.sample()).ifPresent(sample -> add(sample, grid, spread));
                }
              });
      return new LayerLook(
          grid.lanes(),
          spread.spread(),
          new MovementLook(means(figures)).movement(control(figures), spec));
    }

    private static void add(Sample sample, LaneGrid grid, ReadingSpread spread) {
      grid.add(sample);
      spread.add(sample);
    }

    private static MeanSeries means(FigureColumns figures) {
      MeanSeries means = new MeanSeries(MovementLook.MEANS);
      for (int i = 0; i < figures.count(); i++) {
        if (figures.size(i) > 0) {
          means.add(at(figures, i), figures.mean(i));
        }
      }
      return means;
    }

    private static Instant at(FigureColumns figures, int index) {
      return figures.takenAt(index);
    }

    /** The limits of the newest sample's mean, where they raise alarms. */
    private Optional<Band> control(FigureColumns figures) {
      List<LimitsVersion> versions = tables.limits().of(production.series(characteristic));
      for (int i = figures.count() - 1; i >= 0; i--) {
        if (figures.size(i) > 0) {
          int size = figures.size(i);
          return SeriesJudge.inForce(versions, at(figures, i))
              .map(version -> version.limits().mean(size));
        }
      }
      return Optional.empty();
    }
  }
}
