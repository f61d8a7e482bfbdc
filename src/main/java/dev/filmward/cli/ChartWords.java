package dev.filmward.cli;

import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.Series;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** One of the other charts of a series, as a sentence. */
final class ChartWords {
  private ChartWords() {}

  static String of(Charted chart, Series series) {
    String name = name(chart);
    if (chart.signals().isEmpty()) {
      return name + ": no point beyond its limits.";
    }
    Map<String, List<ChartSignal>> parts = new LinkedHashMap<>();
    for (ChartSignal signal : chart.signals()) {
      parts.computeIfAbsent(signal.part(), part -> new ArrayList<>()).add(signal);
    }
    return name
        + ": beyond limits "
        + parts.entrySet().stream()
            .map(part -> words(part.getKey(), part.getValue(), series))
            .collect(Collectors.joining("; "))
        + ".";
  }

  private static String name(Charted chart) {
    return chart.chart().equals("t-squared")
        ? "t-squared chart (total and ratios of all layers)"
        : chart.chart() + " chart";
  }

  private static String words(String part, List<ChartSignal> signals, Series series) {
    Map<String, Long> behind = new LinkedHashMap<>();
    signals.forEach(signal -> signal.behind().forEach(cause -> behind.merge(cause, 1L, Long::sum)));
    return part(part)
        + " at "
        + signals.stream().mapToInt(ChartSignal::index).distinct().count()
        + " of "
        + series.sizes().subgroups()
        + " samples, the first number "
        + (signals.get(0).index() + 1)
        + (behind.isEmpty() ? "" : ", by " + words(behind));
  }

  private static String part(String part) {
    return switch (part) {
      case "jump" -> "in the jump from the sample before";
      case "within" -> "in the spread of lanes about their profile";
      case "distance-later" -> "in the distance, after the baseline,";
      default -> "in the " + part.replace('-', ' ');
    };
  }

  /** The most frequent first. */
  private static String words(Map<String, Long> behind) {
    return behind.entrySet().stream()
        .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
        .map(cause -> cause.getKey() + " (" + times(cause.getValue()) + ")")
        .collect(Collectors.joining(", "));
  }

  private static String times(long count) {
    return count == 1 ? "once" : count + " times";
  }
}
