package dev.filmward.gauge.study;

import dev.filmward.film.SpecLimits;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a gauge study is to be: every operator measures every marked spot so many times, all layers
 * at once. Names are different from each other. Immutable.
 *
 * @param gauge its name, as on its label
 * @param structure code of the film that is measured
 * @param purpose why the study is made
 * @param layers from the outer face inwards, with their tolerances of that day
 * @param total limits of that day for the sum of all layers, um
 * @param parts the marked spots
 * @param seed of the order in which they are measured
 */
public record StudyPlan(
    String gauge,
    String structure,
    String purpose,
    List<PlannedLayer> layers,
    SpecLimits total,
    List<String> parts,
    List<String> operators,
    int trials,
    long seed) {
  /** The layer that is made up of all others. */
  public static final String TOTAL = "total";

  private static final int LONGEST_NAME = 60;
  private static final int MOST_PARTS = 100;
  private static final int MOST_OPERATORS = 20;
  private static final int MOST_TRIALS = 20;
  private static final int MOST_LAYERS = 64;

  /**
   * A layer to be studied.
   *
   * @param limits of single readings, um
   */
  public record PlannedLayer(String name, SpecLimits limits) {}

  public StudyPlan {
    layers = List.copyOf(layers);
    parts = List.copyOf(parts);
    operators = List.copyOf(operators);
    checkName("gauge", gauge);
    checkName("structure", structure);
    if (purpose.isBlank()) {
      throw new IllegalArgumentException("write why the study is made");
    }
    checkNames("parts", parts, 2, MOST_PARTS);
    checkNames("operators", operators, 1, MOST_OPERATORS);
    checkNames("layers", layers.stream().map(PlannedLayer::name).toList(), 1, MOST_LAYERS);
    if (trials < 2 || trials > MOST_TRIALS) {
      throw new IllegalArgumentException(
          "each operator measures each part 2 to " + MOST_TRIALS + " times, not " + trials);
    }
  }

  /** How often somebody measures. */
  public int steps() {
    return parts.size() * operators.size() * trials;
  }

  /** How many readings that gives. */
  public int readings() {
    return steps() * layers.size();
  }

  private static void checkNames(String what, List<String> names, int least, int most) {
    if (names.size() < least || names.size() > most) {
      throw new IllegalArgumentException(
          "a study has " + least + " to " + most + " " + what + ", not " + names.size());
    }
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      checkName(what, name);
      if (!seen.add(name)) {
        throw new IllegalArgumentException(
            what + " must be told apart; " + StudyWords.quoted(name) + " stands twice");
      }
    }
  }

  private static void checkName(String what, String name) {
    boolean isPrintable = name.chars().noneMatch(Character::isISOControl);
    if (name.isBlank() || name.length() > LONGEST_NAME || !isPrintable) {
      throw new IllegalArgumentException(
          what + ": a name has 1 to " + LONGEST_NAME + " characters, all of them printable");
    }
  }
}
