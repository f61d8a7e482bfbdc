package dev.filmward.cli;

import dev.filmward.intake.FileCount;
import dev.filmward.pipeline.Analysis;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.Analysis.Thinned;
import dev.filmward.pipeline.SeriesDetail;
import dev.filmward.tables.AnalysisTable;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** An analysis for people: what was read, a table, and a verdict on every series in words. */
final class AnalysisText {
  private static final DateTimeFormatter MINUTES =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final double ENOUGH = 1.33;

  private final ZoneId zone;

  private final OutputOptions output;

  AnalysisText(ZoneId zone, OutputOptions output) {
    this.zone = zone;
    this.output = output;
  }

  String of(Analysis analysis) {
    StringBuilder text = new StringBuilder();
    analysis.files().forEach(file -> text.append(summary(file)).append('\n'));
    analysis.thinned().forEach(thinned -> text.append(words(thinned)).append('\n'));
    if (analysis.series().isEmpty()) {
      return text.append("Nothing to chart: no reading could be used.\n").toString();
    }
    text.append("\nLengths in um, shares as fractions; LCL and UCL are of the mean.\n");
    text.append(new AnalysisTable(analysis).text()).append('\n');
    analysis.series().forEach(series -> append(text, series));
    analysis.correlations().forEach(film -> text.append(CorrelationWords.of(film)));
    analysis.prices().forEach(price -> text.append(PriceWords.of(price)));
    boolean ofThemselves =
        analysis.series().stream()
            .anyMatch(series -> series.baseline() == series.sizes().subgroups());
    return text.append("\nA chart is not a safety interlock and not a release test.")
        .append(
            ofThemselves
                ? " Limits were computed from these very data;\nfreeze them from a quiet baseline"
                    + " before you act on them.\n"
                : "\n")
        .toString();
  }

  /** What is left out of the figures that follow. */
  String words(Thinned thinned) {
    return "%s, %s: %d samples, taken from %s to %s, are thinned and not in these figures"
        .formatted(
            thinned.line(),
            thinned.structure(),
            thinned.samples(),
            MINUTES.format(thinned.from().atZone(zone)),
            MINUTES.format(thinned.to().atZone(zone)));
  }

  private void append(StringBuilder text, Series series) {
    text.append(verdict(series)).append('\n');
    series
        .charts()
        .forEach(chart -> text.append("  ").append(ChartWords.of(chart, series)).append('\n'));
    series
        .detail()
        .map(new DetailWords(zone, output)::of)
        .ifPresent(words -> words.forEach(each -> text.append("  ").append(each).append('\n')));
  }

  static String summary(FileCount file) {
    String counts =
        String.format(
            Locale.ROOT,
            "%s: %d rows, %d readings, %d missing, %d quarantined",
            file.name(),
            file.rows(),
            file.readings(),
            file.missing(),
            file.quarantined());
    return file.notes().isEmpty() ? counts : counts + "\n  " + String.join("\n  ", file.notes());
  }

  private String verdict(Series series) {
    String name =
        series.key().line()
            + ", "
            + series.key().structure()
            + ", "
            + series.key().characteristic().name()
            + ": ";
    if (series.sigmaWithin().isEmpty()) {
      return series.sizes().greatest() > 1
          ? name + "no limits, for a range says nothing of more than 100 readings a sample."
          : name + "no limits, for no sample has two readings.";
    }
    if (series.signals().isEmpty()) {
      return name + "no test is fulfilled; " + capability(series) + ".";
    }
    PointSignal first = series.signals().get(0);
    return name
        + series.signals().size()
        + (series.signals().size() == 1 ? " signal, at sample " : " signals, the first at sample ")
        + first.sample()
        + " ("
        + MINUTES.format(first.takenAt().atZone(zone))
        + ", "
        + first.signal().test().word()
        + " on the "
        + (first.signal().chart().word().equals("xbar") ? "mean" : "range")
        + ", "
        + first.signal().side().word()
        + (isChance(series)
            ? "), no more than chance makes; " + capability(series) + "."
            : "): look there before you speak of capability.");
  }

  /** Only a closer look can tell. */
  private static boolean isChance(Series series) {
    return series
        .detail()
        .flatMap(SeriesDetail::capability)
        .map(statement -> statement.stability().isStable())
        .orElse(false);
  }

  private static String capability(Series series) {
    if (series.capability().cpk().isEmpty()) {
      return "no specification to compare with";
    }
    double cpk = series.capability().cpk().getAsDouble();
    return String.format(
        Locale.ROOT, "Cpk %.2f is %s %.2f", cpk, cpk >= ENOUGH ? "at least" : "below", ENOUGH);
  }
}
