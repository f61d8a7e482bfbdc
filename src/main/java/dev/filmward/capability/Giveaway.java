package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Thickness beyond what the specification needs. Nominal: above the mean that the contract asks
 * for. Achievable: above the lowest mean that still keeps the required Ppk, {@code LSL + 3 Ppk
 * sigma}, which is what could really be taken out with today's spread. Micrometres. Negative is a
 * risk, not a saving, and the words say so.
 *
 * <p>A velocity in the gauge that is wrong by 2 % makes the mean wrong by 2 %, whatever the number
 * of readings: see to that before taking resin out. Immutable.
 *
 * <p>Source: arithmetic, from the definition of Ppk in ISO 22514-2.
 *
 * @param meanUm mean thickness now
 * @param contractMeanUm least mean that the contract asks for, or the nominal one
 * @param lowestMeanUm empty without a lower specification limit
 * @param highestMeanUm the highest that keeps the required Ppk; empty without an upper limit
 */
public record Giveaway(
    double meanUm,
    OptionalDouble contractMeanUm,
    OptionalDouble lowestMeanUm,
    OptionalDouble highestMeanUm,
    double requiredPpk) {

  public Giveaway {
    Positive.check("a mean thickness in um", meanUm);
    Positive.check("a required Ppk", requiredPpk);
  }

  /**
   * From the indices of single readings with the spread of all of them.
   *
   * @param contractMeanUm least mean that the contract asks for, or the nominal one
   */
  public static Giveaway of(Indices points, double requiredPpk, OptionalDouble contractMeanUm) {
    double reserve = 3 * requiredPpk * points.sigma();
    return new Giveaway(
        points.mean(),
        contractMeanUm,
        plus(points.spec().lower(), reserve),
        plus(points.spec().upper(), -reserve),
        requiredPpk);
  }

  /**
   * From a statement, with its requirement: the lowest mean that keeps the required Ppk of single
   * points, of sample averages and of the worst lane, and the least mean of the contract, where the
   * average has a lower limit. Empty without a lower limit of points, and without spread.
   */
  public static Optional<Giveaway> of(CapabilityStatement statement) {
    Indices points = statement.points().indices();
    CapabilityQuestion question = statement.points().question();
    OptionalDouble least = question.average().lower();
    double room = least.isPresent() ? points.mean() - least.getAsDouble() : Double.MAX_VALUE;
    double roomAbove = Double.MAX_VALUE;
    for (Answer answer : statement.answers()) {
      double reserve = 3 * question.requirement() * answer.indices().sigma();
      double mean = answer.indices().mean();
      SpecLimits spec = answer.indices().spec();
      room = Math.min(room, mean - reserve - spec.lower().orElse(-Double.MAX_VALUE));
      roomAbove = Math.min(roomAbove, spec.upper().orElse(Double.MAX_VALUE) - reserve - mean);
    }
    return points.spec().lower().isEmpty() || !(points.mean() > 0) || points.sigma() == 0
        ? Optional.empty()
        : Optional.of(
            new Giveaway(
                points.mean(),
                least,
                OptionalDouble.of(points.mean() - room),
                points.spec().upper().isPresent()
                    ? OptionalDouble.of(points.mean() + roomAbove)
                    : OptionalDouble.empty(),
                question.requirement()));
  }

  public OptionalDouble nominalUm() {
    return above(contractMeanUm);
  }

  public OptionalDouble achievableUm() {
    return above(lowestMeanUm);
  }

  /** Whether any mean keeps the required Ppk at both limits with this spread. */
  public boolean isReachable() {
    return lowestMeanUm.isEmpty()
        || highestMeanUm.isEmpty()
        || lowestMeanUm.getAsDouble() <= highestMeanUm.getAsDouble();
  }

  public Optional<ResinCost> nominal(Production production) {
    return cost(nominalUm(), production);
  }

  public Optional<ResinCost> achievable(Production production) {
    return cost(achievableUm(), production);
  }

  /** One or two sentences. */
  public String words() {
    return (nominalWords() + " " + achievableWords()).strip();
  }

  private String nominalWords() {
    if (nominalUm().isEmpty()) {
      return "";
    }
    double um = nominalUm().getAsDouble();
    return um >= 0
        ? text("The mean is %.2f um above the least mean that is asked for.", um)
        : text("Risk: the mean is %.2f um below the least mean that is asked for.", -um);
  }

  private String achievableWords() {
    if (achievableUm().isEmpty()) {
      return "Without a lower specification limit nobody can say what could be taken out.";
    }
    double um = achievableUm().getAsDouble();
    if (!isReachable()) {
      return text(
          "With this spread no mean keeps a Ppk of %.2f; steady the line first.", requiredPpk);
    }
    return um >= 0
        ? text("%.2f um could be taken out and a Ppk of %.2f be kept.", um, requiredPpk)
        : text(
            "Risk, not saving: %.2f um are missing for a Ppk of %.2f with this spread.",
            -um, requiredPpk);
  }

  private Optional<ResinCost> cost(OptionalDouble um, Production production) {
    return um.isPresent()
        ? Optional.of(ResinCost.of(um.getAsDouble(), meanUm, production))
        : Optional.empty();
  }

  private OptionalDouble above(OptionalDouble level) {
    return level.isPresent()
        ? OptionalDouble.of(meanUm - level.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble plus(OptionalDouble value, double more) {
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() + more)
        : OptionalDouble.empty();
  }

  private static String text(String pattern, Object... figures) {
    return String.format(Locale.ROOT, pattern, figures);
  }
}
