package dev.filmward.tables;

import dev.filmward.chart.Band;
import dev.filmward.pipeline.Analysis;
import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.Series;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.columns.Column;

/**
 * The charts of an analysis besides means and ranges, as columns: three for each of their parts.
 */
final class ChartColumns {
  private ChartColumns() {}

  private record Part(String chart, String part) {
    private Optional<Charted> in(Series series) {
      return series.charts().stream().filter(drawn -> drawn.chart().equals(chart)).findFirst();
    }

    private double limit(Series series, ToDoubleFunction<Band> side) {
      return in(series)
          .map(drawn -> drawn.bands().get(part))
          .map(side::applyAsDouble)
          .orElse(Double.NaN);
    }

    private int signals(Series series) {
      return (int)
          in(series).stream()
              .flatMap(drawn -> drawn.signals().stream())
              .map(ChartSignal::part)
              .filter(part::equals)
              .count();
    }
  }

  static List<Column<?>> of(Analysis analysis) {
    Set<Part> parts = new LinkedHashSet<>();
    for (Series series : analysis.series()) {
      for (Charted drawn : series.charts()) {
        drawn.bands().keySet().forEach(part -> parts.add(new Part(drawn.chart(), part)));
      }
    }
    List<Column<?>> columns = new ArrayList<>();
    for (Part part : parts) {
      String name = part.chart() + " " + part.part();
      columns.add(limits(name + " LCL", analysis, series -> part.limit(series, Band::lower)));
      columns.add(limits(name + " UCL", analysis, series -> part.limit(series, Band::upper)));
      columns.add(
          IntColumn.create(
              name + " signals", analysis.series().stream().mapToInt(part::signals).toArray()));
    }
    return columns;
  }

  private static DoubleColumn limits(
      String name, Analysis analysis, ToDoubleFunction<Series> value) {
    return DoubleColumn.create(name, analysis.series().stream().mapToDouble(value).toArray());
  }
}
