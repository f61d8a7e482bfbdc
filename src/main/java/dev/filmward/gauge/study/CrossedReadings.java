package dev.filmward.gauge.study;

import java.util.Arrays;
import java.util.List;

/**
 * The readings of one layer in a balanced study: every operator measured every part equally often,
 * at least twice. Immutable.
 */
public final class CrossedReadings {
  private final String layer;
  private final List<String> parts;
  private final List<String> operators;
  private final double[][][] um;

  /**
   * @param um by part, operator and trial; at least two parts, one operator and two trials
   */
  CrossedReadings(String layer, List<String> parts, List<String> operators, double[][][] um) {
    this.layer = layer;
    this.parts = List.copyOf(parts);
    this.operators = List.copyOf(operators);
    this.um = um;
    if (parts.size() < 2 || operators.isEmpty() || um[0][0].length < 2) {
      throw new IllegalArgumentException("a study has two parts, an operator and two trials");
    }
  }

  public String layer() {
    return layer;
  }

  public List<String> parts() {
    return parts;
  }

  public List<String> operators() {
    return operators;
  }

  public int trials() {
    return um[0][0].length;
  }

  /** Of all readings. */
  public double meanUm() {
    return Arrays.stream(um)
        .flatMap(Arrays::stream)
        .flatMapToDouble(Arrays::stream)
        .average()
        .orElseThrow();
  }

  /** What one operator read of one part, trial by trial. */
  public List<Double> cellUm(int part, int operator) {
    return Arrays.stream(um[part][operator]).boxed().toList();
  }

  /** Whether any two readings of one part by one operator are unlike. */
  boolean differOnRepeating() {
    return Arrays.stream(um)
        .flatMap(Arrays::stream)
        .anyMatch(cell -> Arrays.stream(cell).anyMatch(value -> value != cell[0]));
  }

  double[][][] um() {
    return um;
  }
}
