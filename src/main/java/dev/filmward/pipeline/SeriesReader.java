package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.SeriesJudge.Judged;
import dev.filmward.pipeline.SeriesView.SignalAt;
import dev.filmward.pipeline.SeriesView.Summary;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;

/** Reads what a chart of one series shows. Thread-safe. */
public final class SeriesReader {
  private final Plant plant;

  public SeriesReader(Plant plant) {
    this.plant = plant;
  }

  /** Which series. */
  public record Address(String line, String structure, Characteristic.Kind kind, int position) {}

  /**
   * Reads the rows of a span of time with all that belongs to them.
   *
   * @throws NoSuchElementException if there is no such structure or layer
   */
  public SeriesView read(Address address, Span span) {
    Structure structure =
        plant
            .structures()
            .find(address.structure())
            .orElseThrow(
                () -> new NoSuchElementException("no structure \"" + address.structure() + "\""));
    Characteristic characteristic = characteristic(structure, address);
    return plant.store().read(tables -> read(tables, address, structure, characteristic, span));
  }

  private static Characteristic characteristic(Structure structure, Address address) {
    if (address.kind() == Characteristic.Kind.TOTAL) {
      return Characteristic.total();
    }
    List<ReportedLayer> layers = structure.reported();
    if (address.kind() != Characteristic.Kind.LAYER
        || !(address.position() >= 1 && address.position() <= layers.size())) {
      throw new NoSuchElementException(
          "no " + address.kind().word() + " " + address.position() + " in " + structure.code());
    }
    return Characteristic.layer(layers.get(address.position() - 1));
  }

  private static SeriesView read(
      Tables tables,
      Address address,
      Structure structure,
      Characteristic characteristic,
      Span span) {
    Series series = new Series(address.line(), address.structure(), characteristic.position());
    List<FigureRow> rows = tables.figures().within(series, span);
    List<LimitsVersion> frozen = tables.limits().of(series);
    List<LimitsVersion> limits =
        frozen.isEmpty()
            ? LimitsDesk.trial(tables, series).map(List::of).orElse(List.of())
            : frozen;
    List<SignalAt> signals =
        frozen.isEmpty()
            ? trialSignals(tables, series, span, new Rows(rows, limits))
            : storedSignals(tables.signals().within(series, span), rows);
    return new SeriesView(
        address.line(),
        structure,
        characteristic,
        rows,
        signals,
        limits,
        frozen.isEmpty(),
        summary(rows, structure.spec(characteristic)));
  }

  private record Rows(List<FigureRow> rows, List<LimitsVersion> limits) {}

  private static List<SignalAt> trialSignals(Tables tables, Series series, Span span, Rows shown) {
    SeriesJudge judge = new SeriesJudge(shown.limits());
    judge.judge(tables.figures().before(series, span.from(), SeriesTests.WARM_UP));
    Map<Long, Integer> index = index(shown.rows());
    List<SignalAt> signals = new ArrayList<>();
    for (Judged judged : judge.judge(shown.rows())) {
      Integer at = index.get(judged.row().sampleId());
      for (Signal signal : judged.now()) {
        signals.add(new SignalAt(at == null ? 0 : at, signal));
      }
    }
    return signals;
  }

  private static List<SignalAt> storedSignals(
      List<SignalTable.Stored> stored, List<FigureRow> rows) {
    Map<Long, Integer> index = index(rows);
    List<SignalAt> signals = new ArrayList<>();
    for (SignalTable.Stored each : stored) {
      Integer at = index.get(each.sampleId());
      if (at != null) {
        signals.add(new SignalAt(at, each.signal()));
      }
    }
    return signals;
  }

  private static Map<Long, Integer> index(List<FigureRow> rows) {
    Map<Long, Integer> index = new HashMap<>();
    for (int i = 0; i < rows.size(); i++) {
      index.put(rows.get(i).sampleId(), i);
    }
    return index;
  }

  private static Summary summary(List<FigureRow> rows, SpecLimits spec) {
    SeriesFigures figures = new SeriesFigures();
    for (FigureRow row : rows) {
      row.subgroup()
          .ifPresent(
              found ->
                  figures.add(found.size(), found.mean(), found.range(), found.sumOfSquares()));
    }
    return new Summary(
        figures.readings(),
        figures.mean(),
        figures.sigmaWithin(),
        figures.sigmaOverall(),
        figures.capability(spec));
  }
}
