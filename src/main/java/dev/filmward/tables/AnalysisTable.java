package dev.filmward.tables;

import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.Analysis;
import dev.filmward.pipeline.Analysis.Series;
import java.io.StringWriter;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** The summary of an analysis as a table: a row a series. */
public final class AnalysisTable {
  private static final double GAP = Double.NaN;

  private final Analysis analysis;
  private final Table table;

  /** Lays an analysis out. */
  public AnalysisTable(Analysis analysis) {
    this.analysis = analysis;
    this.table =
        Table.create(
            "analysis",
            words("line", analysis, series -> series.key().line()),
            words("structure", analysis, series -> series.key().structure()),
            words("characteristic", analysis, AnalysisTable::name),
            counts("subgroups", analysis, series -> (int) series.sizes().subgroups()),
            counts("size", analysis, series -> series.sizes().usual()),
            figures("mean", analysis, Series::mean),
            figures("sigma within", analysis, series -> orGap(series.sigmaWithin())),
            figures("sigma overall", analysis, series -> orGap(series.sigmaOverall())),
            figures("LCL", analysis, series -> series.xbar().map(b -> b.lower()).orElse(GAP)),
            figures("UCL", analysis, series -> series.xbar().map(b -> b.upper()).orElse(GAP)),
            figures("Cp", analysis, series -> orGap(series.capability().cp())),
            figures("Cpk", analysis, series -> orGap(series.capability().cpk())),
            figures("Pp", analysis, series -> orGap(series.capability().pp())),
            figures("Ppk", analysis, series -> orGap(series.capability().ppk())),
            counts("signals", analysis, series -> series.signals().size()));
  }

  /**
   * Every figure in full, one row a series, for a spreadsheet or another program; the limits and
   * signals of other charts in columns behind. Names come from files, so that none is left to be
   * taken for a formula.
   */
  public String csv() {
    StringWriter out = new StringWriter();
    Table full = table.copy();
    ChartColumns.of(analysis).forEach(full::addColumns);
    for (StringColumn names : table.stringColumns()) {
      full.replaceColumn(
          names.name(),
          StringColumn.create(
              names.name(), names.asList().stream().map(SpreadsheetText::of).toList()));
    }
    full.write().csv(out);
    return out.toString();
  }

  /** For people: aligned, with as many digits as a gauge can resolve. */
  public String text() {
    return AlignedText.of(table, AnalysisTable::digits);
  }

  private static int digits(String column) {
    return column.length() <= 3 && !column.endsWith("CL") ? 2 : 3;
  }

  private static String name(Series series) {
    Characteristic what = series.key().characteristic();
    return switch (what.kind()) {
      case LAYER -> what.position() + " " + what.name();
      case TOTAL -> what.name();
      case SHARE -> "share of " + what.position() + " " + what.name();
    };
  }

  private static double orGap(OptionalDouble value) {
    return value.orElse(GAP);
  }

  private static StringColumn words(
      String name, Analysis analysis, Function<Series, String> value) {
    return StringColumn.create(name, analysis.series().stream().map(value).toList());
  }

  private static IntColumn counts(String name, Analysis analysis, Function<Series, Integer> value) {
    return IntColumn.create(name, analysis.series().stream().map(value).toArray(Integer[]::new));
  }

  private static DoubleColumn figures(
      String name, Analysis analysis, ToDoubleFunction<Series> value) {
    return DoubleColumn.create(name, analysis.series().stream().mapToDouble(value).toArray());
  }
}
