package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Normal;
import java.util.OptionalDouble;

/**
 * All indices of one mean and one standard deviation against one specification. Whether they are
 * called Cp or Pp depends on which standard deviation was given: within subgroups or of all
 * readings. Lengths in micrometres; parts per million (ppm) assume a normal distribution.
 *
 * <p>What the specification does not allow is empty: with one limit there is only the index of that
 * side, which is then also Cpk; Cpm and Cpmk take both limits and a target. A mean outside the
 * limits makes indices negative. Without spread nothing can be computed. Immutable.
 *
 * <p>Source: ISO 22514-2; NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6, for Cp, Cpu, Cpl,
 * Cpk and k; L. K. Chan, S. W. Cheng and F. A. Spiring, Journal of Quality Technology 20 (1988)
 * 162, for Cpm; W. L. Pearn, S. Kotz and N. L. Johnson, ibid. 24 (1992) 216, for Cpmk.
 *
 * @param sigma standard deviation, not negative
 */
public record Indices(double mean, double sigma, SpecLimits spec) {
  private static final double MILLION = 1e6;

  public Indices {
    if (!Double.isFinite(mean) || !(sigma >= 0) || !Double.isFinite(sigma)) {
      throw new IllegalArgumentException(
          "indices take a finite mean and spread, not " + mean + " and " + sigma);
    }
  }

  public static Indices of(double mean, double sigma, SpecLimits spec) {
    return new Indices(mean, sigma, spec);
  }

  /** Width of the specification in 6 sigma. */
  public OptionalDouble cp() {
    return quotient(width(), 6 * sigma);
  }

  /** Distance to the upper limit in 3 sigma. */
  public OptionalDouble cpu() {
    return quotient(roomAbove(), 3 * sigma);
  }

  /** Distance to the lower limit in 3 sigma. */
  public OptionalDouble cpl() {
    return quotient(roomBelow(), 3 * sigma);
  }

  /** The smaller of what there is of Cpu and Cpl. */
  public OptionalDouble cpk() {
    return smaller(cpu(), cpl());
  }

  /** Cp with the distance from the target added to the spread. */
  public OptionalDouble cpm() {
    return hasBothLimits() ? quotient(width(), 6 * spreadAboutTarget()) : OptionalDouble.empty();
  }

  /** Cpk with the distance from the target added to the spread. */
  public OptionalDouble cpmk() {
    return hasBothLimits()
        ? quotient(smaller(roomAbove(), roomBelow()), 3 * spreadAboutTarget())
        : OptionalDouble.empty();
  }

  /** Distance of the mean from the middle of the specification, in half its width. */
  public OptionalDouble k() {
    if (!hasBothLimits()) {
      return OptionalDouble.empty();
    }
    return quotient(OptionalDouble.of(offsetUm()), width().getAsDouble() / 2);
  }

  public OptionalDouble ppmAbove() {
    return ppmBeyond(cpu());
  }

  public OptionalDouble ppmBelow() {
    return ppmBeyond(cpl());
  }

  /** Outside what limits there are. */
  public OptionalDouble ppmTotal() {
    return ppmAbove().isEmpty() && ppmBelow().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(ppmAbove().orElse(0) + ppmBelow().orElse(0));
  }

  /** Of the mean from the middle of both limits, which there must be. */
  double offsetUm() {
    return Math.abs(roomAbove().getAsDouble() - roomBelow().getAsDouble()) / 2;
  }

  boolean hasBothLimits() {
    return spec.lower().isPresent() && spec.upper().isPresent();
  }

  private OptionalDouble width() {
    return hasBothLimits()
        ? OptionalDouble.of(spec.upper().getAsDouble() - spec.lower().getAsDouble())
        : OptionalDouble.empty();
  }

  private OptionalDouble roomAbove() {
    return spec.upper().isPresent()
        ? OptionalDouble.of(spec.upper().getAsDouble() - mean)
        : OptionalDouble.empty();
  }

  private OptionalDouble roomBelow() {
    return spec.lower().isPresent()
        ? OptionalDouble.of(mean - spec.lower().getAsDouble())
        : OptionalDouble.empty();
  }

  /** 0, so that there is no index, where there is no spread or no target. */
  private double spreadAboutTarget() {
    return sigma > 0 && spec.target().isPresent()
        ? Math.hypot(sigma, mean - spec.target().getAsDouble())
        : 0;
  }

  private static OptionalDouble ppmBeyond(OptionalDouble index) {
    return index.isPresent()
        ? OptionalDouble.of(MILLION * Normal.STANDARD.above(3 * index.getAsDouble()))
        : OptionalDouble.empty();
  }

  static OptionalDouble smaller(OptionalDouble a, OptionalDouble b) {
    if (a.isEmpty() || b.isEmpty()) {
      return a.isPresent() ? a : b;
    }
    return a.getAsDouble() <= b.getAsDouble() ? a : b;
  }

  static OptionalDouble quotient(OptionalDouble distance, double unit) {
    double index = distance.orElse(Double.NaN) / unit;
    return Double.isFinite(index) ? OptionalDouble.of(index) : OptionalDouble.empty();
  }
}
