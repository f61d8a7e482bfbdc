package dev.filmward.gauge.study;

import dev.filmward.film.SpecLimits;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a gauge study is to be: every operator measures every marked spot so many times, all layers
 * at once; or pieces of known thickness, as one layer. Names are different from each other.
 * Immutable.
 *
 * @param gauge its name, as on its label
 * @param structure code of the film that is measured
 * @param purpose why the study is made
 * @param layers from the outer face inwards, with their tolerances of that day
 * @param total limits of that day for the sum of all layers, um
 * @param parts the marked spots, or the known pieces
 * @param trials of stability they count on from date to date
 * @param seed of the order in which they are measured
 * @param known empty for a crossed study
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
    long seed,
    Optional<KnownPieces> known) {
  /** The layer that is made up of all others. */
  public static final String TOTAL = "total";

  private static final int LONGEST_NAME = 60;
  private static final int MOST_PARTS = 100;
  private static final int MOST_OPERATORS = 20;
  private static final int MOST_TRIALS = 20;
  private static final int MOST_KNOWN_TRIALS = 200;
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
    checkNames("parts", parts, known.isPresent() ? 1 : 2, MOST_PARTS);
    checkNames("operators", operators, 1, MOST_OPERATORS);
    checkNames("layers", layers.stream().map(PlannedLayer::name).toList(), 1, MOST_LAYERS);
    if (known.isPresent()) {
      checkKnown(known.get(), layers, operators, trials);
    } else if (trials < 2 || trials > MOST_TRIALS) {
      throw new IllegalArgumentException(
          "each operator measures each part 2 to " + MOST_TRIALS + " times, not " + trials);
    }
  }

  /** A crossed study. */
  public StudyPlan(
      String gauge,
      String structure,
      String purpose,
      List<PlannedLayer> layers,
      SpecLimits total,
      List<String> parts,
      List<String> operators,
      int trials,
      long seed) {
    this(
        gauge, structure, purpose, layers, total, parts, operators, trials, seed, Optional.empty());
  }

  /**
   * A study of known pieces.
   *
   * @param layer as which the gauge reads them
   * @param times how often each operator measures each piece, or the piece on each date
   */
  public static StudyPlan of(Frame frame, PlannedLayer layer, KnownPieces known, int times) {
    if (known.kind() == StudyKind.STABILITY && (times < 1 || times > MOST_TRIALS)) {
      throw new IllegalArgumentException(
          "the piece is measured 1 to " + MOST_TRIALS + " times on each date, not " + times);
    }
    return new StudyPlan(
        frame.gauge,
        frame.structure,
        frame.purpose,
        List.of(layer),
        layer.name().equals(TOTAL) ? layer.limits() : SpecLimits.NONE,
        known.names(),
        frame.operators,
        known.dates().isEmpty() ? times : times * known.dates().size(),
        frame.seed,
        Optional.of(known));
  }

  /** What studies of all kinds have. */
  public record Frame(
      String gauge, String structure, String purpose, List<String> operators, long seed) {
    public Frame {
      operators = List.copyOf(operators);
    }
  }

  public StudyKind kind() {
    return known.map(KnownPieces::kind).orElse(StudyKind.CROSSED);
  }

  /** The date of a trial; empty but for stability. */
  public Optional<LocalDate> dateOf(int trial) {
    return perDate() == 0
        ? Optional.empty()
        : Optional.of(known.orElseThrow().dates().get((trial - 1) / perDate()));
  }

  /** How often the piece is measured on a date; 0 but for stability. */
  public int perDate() {
    return known.map(one -> one.dates().isEmpty() ? 0 : trials / one.dates().size()).orElse(0);
  }

  /** How often somebody measures. */
  public int steps() {
    return parts.size() * operators.size() * trials;
  }

  /** How many readings that gives. */
  public int readings() {
    return steps() * layers.size();
  }

  private static void checkKnown(
      KnownPieces known, List<PlannedLayer> layers, List<String> operators, int trials) {
    if (layers.size() != 1) {
      throw new IllegalArgumentException("known pieces are read as one layer, or as the total");
    }
    if (known.kind() == StudyKind.STABILITY) {
      if (operators.size() != 1) {
        throw new IllegalArgumentException(
            "a study of stability has one operator; who enters a reading is kept with it");
      }
    } else if (trials < 2 || trials > MOST_KNOWN_TRIALS) {
      throw new IllegalArgumentException(
          "each operator measures each piece 2 to " + MOST_KNOWN_TRIALS + " times, not " + trials);
    }
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
