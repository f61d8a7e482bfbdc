package dev.filmward.cli;

import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.Series;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** One of the other charts of a series, as a sentence. */
final class ChartWords {
  private ChartWords() {}

  static String of(Charted chart, Series series) {
    String name = name(chart);
    if (chart.signals().isEmpty()) {
      return name + ": no point beyond its limits.";
    }
    Map<String, Set<Integer>> points = new LinkedHashMap<>();
    Map<String, Long> behind = new LinkedHashMap<>();
    for (ChartSignal signal : chart.signals()) {
      points.computeIfAbsent(signal.part(), part -> new LinkedHashSet<>()).add(signal.index());
      signal.behind().forEach(cause -> behind.merge(cause, 1L, Long::sum));
    }
    return name
        + ": beyond limits "
        + points.entrySet().stream()
            .map(part -> part(part.getKey(), part.getValue(), series))
            .collect(Collectors.joining("; "))
        + "."
        + (behind.isEmpty() ? "" : " Behind it: " + words(behind) + ".");
  }

  private static String name(Charted chart) {
    return chart.chart().equals("t-squared")
        ? "t-squared chart (total and ratios of all layers)"
        : chart.chart() + " chart";
  }

  private static String part(String part, Set<Integer> indices, Series series) {
    return part.replace('-', ' ')
        + " at "
        + indices.size()
        + " of "
        + series.sizes().subgroups()
        + " samples, first at number "
        + (indices.iterator().next() + 1);
  }

  /** The most frequent first. */
  private static String words(Map<String, Long> behind) {
    return behind.entrySet().stream()
        .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
        .map(cause -> cause.getKey() + " (" + cause.getValue() + ")")
        .collect(Collectors.joining(", "));
  }
}
