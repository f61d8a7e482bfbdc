package dev.filmward.gauge.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Readings of a gauge study as they come, sorted by layer, part and operator. Names keep the order
 * in which they came first. A trial that comes twice is kept as a fault of its layer, never
 * overwritten. Mutable, for one thread.
 */
public final class StudyReadings {
  private final Map<String, LayerReadings> layers = new LinkedHashMap<>();
  private long count;

  public void add(StudyReading reading) {
    layers.computeIfAbsent(reading.layer(), LayerReadings::new).add(reading);
    count++;
  }

  public long count() {
    return count;
  }

  /** The layers that were read, in the order of their first readings. */
  public List<String> layers() {
    return List.copyOf(layers.keySet());
  }

  /** The readings of one layer, balanced, or what keeps them from being so. */
  Layout layout(String layer) {
    LayerReadings readings = layers.get(layer);
    if (readings == null) {
      throw new IllegalArgumentException("no reading of layer " + layer);
    }
    return readings.layout();
  }

  /** What the readings of one layer amount to. */
  sealed interface Layout {
    record Balanced(CrossedReadings readings) implements Layout {}

    record Faulty(List<String> reasons) implements Layout {}
  }

  /** The readings of one layer. */
  private static final class LayerReadings {
    private static final int FAULTS_SAID = 12;

    private final String layer;
    private final Map<String, Map<String, Map<String, Double>>> byPart = new LinkedHashMap<>();
    private final Map<String, Integer> operators = new LinkedHashMap<>();
    private final List<String> twice = new ArrayList<>();

    /** One text for each trial, however many readings name it. */
    private final Map<String, String> trials = new HashMap<>();

    LayerReadings(String layer) {
      this.layer = layer;
    }

    void add(StudyReading reading) {
      operators.putIfAbsent(reading.operator(), operators.size());
      Double before =
          byPart
              .computeIfAbsent(reading.part(), part -> new LinkedHashMap<>())
              .computeIfAbsent(reading.operator(), operator -> new LinkedHashMap<>())
              .putIfAbsent(trials.computeIfAbsent(reading.trial(), trial -> trial), reading.um());
      if (before != null) {
        twice.add(
            place(reading.part(), reading.operator())
                + " has trial "
                + StudyWords.quoted(reading.trial())
                + " twice; number the trials of each part and operator 1, 2 and so on");
      }
    }

    Layout layout() {
      List<String> faults = new ArrayList<>(twice);
      int most = byPart.values().stream().mapToInt(LayerReadings::mostTrials).max().orElse(0);
      byPart.forEach((part, cells) -> addShort(part, cells, most, faults));
      if (faults.isEmpty()) {
        faults.addAll(tooFew(most));
      }
      return faults.isEmpty()
          ? new Layout.Balanced(crossed(most))
          : new Layout.Faulty(limited(faults));
    }

    private static int mostTrials(Map<String, Map<String, Double>> cells) {
      return cells.values().stream().mapToInt(Map::size).max().orElse(0);
    }

    private void addShort(
        String part, Map<String, Map<String, Double>> cells, int most, List<String> faults) {
      for (String operator : operators.keySet()) {
        int trials = cells.getOrDefault(operator, Map.of()).size();
        if (trials < most) {
          faults.add(
              place(part, operator)
                  + (trials == 0 ? " was not measured" : " has " + StudyWords.trials(trials))
                  + " where others have "
                  + most
                  + "; measure what is missing, or leave that part out altogether");
        }
      }
    }

    private List<String> tooFew(int trials) {
      List<String> faults = new ArrayList<>();
      if (byPart.size() < 2) {
        faults.add(
            "there is one part only, so nothing says how parts differ; measure at least two marked"
                + " spots, ten are usual");
      }
      if (trials < 2) {
        faults.add(
            "each part was measured once by each operator, so nothing says how well the gauge"
                + " repeats; couple anew and measure at least twice");
      }
      return faults;
    }

    private static List<String> limited(List<String> faults) {
      if (faults.size() <= FAULTS_SAID) {
        return faults;
      }
      List<String> first = new ArrayList<>(faults.subList(0, FAULTS_SAID));
      first.add("and " + (faults.size() - FAULTS_SAID) + " more of the same");
      return first;
    }

    private static String place(String part, String operator) {
      return "part " + StudyWords.quoted(part) + " by operator " + StudyWords.quoted(operator);
    }

    private CrossedReadings crossed(int trials) {
      double[][][] um = new double[byPart.size()][operators.size()][trials];
      int row = 0;
      for (Map<String, Map<String, Double>> cells : byPart.values()) {
        for (Map.Entry<String, Integer> operator : operators.entrySet()) {
          Map<String, Double> cell = cells.getOrDefault(operator.getKey(), Collections.emptyMap());
          um[row][operator.getValue()] = cell.values().stream().mapToDouble(v -> v).toArray();
        }
        row++;
      }
      return new CrossedReadings(
          layer, List.copyOf(byPart.keySet()), List.copyOf(operators.keySet()), um);
    }
  }
}
