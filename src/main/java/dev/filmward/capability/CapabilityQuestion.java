package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;

/**
 * What a statement is asked against. Immutable; start from {@link #of}, change what differs.
 *
 * @param average limits for the mean of a sample, um
 * @param individual limits for a single point, um
 * @param requirement the index that is asked for
 * @param confidence of the lower limit
 * @param lag1 autocorrelation of the sample averages
 * @param sigmaWithinUm spread within samples for Cp and Cpk; empty: pooled from the samples
 */
public record CapabilityQuestion(
    SpecLimits average,
    SpecLimits individual,
    double requirement,
    double confidence,
    double lag1,
    OptionalDouble sigmaWithinUm) {
  private static final double USUAL_REQUIREMENT = 1.33;
  private static final double USUAL_CONFIDENCE = 0.95;

  public CapabilityQuestion {
    Positive.check("a required index", requirement);
  }

  /** 1.33 with 95 % confidence, of samples that do not depend on each other. */
  public static CapabilityQuestion of(SpecLimits average, SpecLimits individual) {
    return new CapabilityQuestion(
        average, individual, USUAL_REQUIREMENT, USUAL_CONFIDENCE, 0, OptionalDouble.empty());
  }

  public CapabilityQuestion requiring(double index, double atConfidence) {
    return new CapabilityQuestion(average, individual, index, atConfidence, lag1, sigmaWithinUm);
  }

  public CapabilityQuestion withLag1(double autocorrelation) {
    return new CapabilityQuestion(
        average, individual, requirement, confidence, autocorrelation, sigmaWithinUm);
  }

  public CapabilityQuestion withSigmaWithinUm(double sigmaUm) {
    return new CapabilityQuestion(
        average, individual, requirement, confidence, lag1, OptionalDouble.of(sigmaUm));
  }
}
