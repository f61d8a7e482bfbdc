package dev.filmward.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The figures of every characteristic by its position, 0 for the total, to be compared. */
final class Figures {
  private static final double ALIKE = 1e-9;
  private static final List<String> TESTS =
      List.of("beyond-limit", "two-of-three", "four-of-five", "eight-in-a-row");

  private Figures() {}

  /** From {@code analyse --format json}. */
  static Map<Integer, double[]> ofAnalyse(Path json) throws IOException {
    Map<Integer, double[]> figures = new LinkedHashMap<>();
    for (JsonNode series : new ObjectMapper().readTree(json.toFile()).get("series")) {
      List<Double> row = new ArrayList<>();
      for (String name :
          List.of("subgroups", "readings", "mean", "sigmaOverall", "rangeBar", "sigmaWithin")) {
        row.add(series.get(name).asDouble());
      }
      TESTS.forEach(test -> row.add(signals(series, "xbar", test)));
      row.add(signals(series, "range", "beyond-limit"));
      figures.put(
          series.get("characteristic").path("position").asInt(0),
          row.stream().mapToDouble(d -> d).toArray());
    }
    return figures;
  }

  private static double signals(JsonNode series, String chart, String test) {
    int count = 0;
    for (JsonNode signal : series.get("signals")) {
      boolean isIt =
          signal.get("chart").asText().equals(chart) && signal.get("test").asText().equals(test);
      count += isIt ? 1 : 0;
    }
    return count;
  }

  /** From what {@link DuckDbAnalysis} prints. */
  static Map<Integer, double[]> ofDuckDb(Path lines) throws IOException {
    Map<Integer, double[]> figures = new LinkedHashMap<>();
    for (String line : Files.readAllLines(lines)) {
      String[] parts = line.split(" ");
      double[] row = new double[parts.length - 1];
      for (int i = 1; i < parts.length; i++) {
        row[i - 1] = Double.parseDouble(parts[i]);
      }
      figures.put(Integer.parseInt(parts[0]), row);
    }
    return figures;
  }

  /** The largest relative difference; fails where it is more than 1e-9. */
  static double difference(Map<Integer, double[]> one, Map<Integer, double[]> other) {
    if (!one.keySet().equals(other.keySet())) {
      throw new IllegalStateException("not the same characteristics");
    }
    double largest = 0;
    for (Map.Entry<Integer, double[]> entry : one.entrySet()) {
      double[] that = other.get(entry.getKey());
      for (int i = 0; i < that.length; i++) {
        double here = entry.getValue()[i];
        double difference = Math.abs(here - that[i]) / Math.max(1e-300, Math.abs(that[i]));
        largest = Math.max(largest, here == that[i] ? 0 : difference);
      }
    }
    if (!(largest <= ALIKE)) {
      throw new IllegalStateException("figures differ by " + largest);
    }
    return largest;
  }
}
