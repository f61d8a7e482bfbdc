package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The figures of a series as the gauge exported its readings, worked out from these; samples
 * without readings have none. For one thread, within one transaction.
 */
final class ExportedSeries {
  private final Map<Long, Subgroup> subgroups = new HashMap<>();
  private final AskedFigures figures;

  private ExportedSeries(SpecTimes asked) {
    figures = new AskedFigures(asked);
  }

  static ExportedSeries read(
      Tables tables,
      Production production,
      Characteristic characteristic,
      Span span,
      SpecTimes asked) {
    ExportedSeries series = new ExportedSeries(asked);
    Charted charted = Charted.asExported(tables);
    Structure structure = production.structure();
    tables
        .samples()
        .within(
            production.line(),
            structure.code(),
            span,
            stored -> {
              if (!stored.isThinned()) {
                series.add(stored, charted.figures(stored.sample(), structure), characteristic);
              }
            });
    return series;
  }

  private void add(Stored stored, List<Optional<Subgroup>> all, Characteristic characteristic) {
    all.get(characteristic.position())
        .ifPresent(
            subgroup -> {
              subgroups.put(stored.id(), subgroup);
              figures.at(stored.sample().takenAt());
              figures.add(
                  subgroup.size(), subgroup.mean(), subgroup.range(), subgroup.sumOfSquares());
            });
  }

  /** The same sample with its figures as exported. */
  FigureRow of(FigureRow row) {
    return new FigureRow(
        row.sampleId(),
        row.key(),
        row.takenAt(),
        row.fileId(),
        Optional.ofNullable(subgroups.get(row.sampleId())));
  }

  AskedFigures figures() {
    return figures;
  }
}
