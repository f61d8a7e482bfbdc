package dev.filmward.capability;

import dev.filmward.stats.ChiSquare;
import dev.filmward.stats.NoncentralT;
import dev.filmward.stats.Normal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * How sure an index is: limits at a confidence of, say, 0.95 for indices estimated from a number of
 * readings of a normal characteristic. The standard deviation must be that of those readings, with
 * n - 1.
 *
 * <p>With autocorrelated readings the effective numbers for mean and variance take the place of n;
 * the limits are then approximate. Empty where there is no index, or where the readings are worth
 * less than two for the variance or one for the mean. Immutable.
 *
 * <p>Source: Cp by chi-square, and Cpu and Cpl by the non-central t distribution, exact: R. H.
 * Kushler and P. Hurley, Confidence bounds for capability indices, Journal of Quality Technology 24
 * (1992) 188. Cpk: {@link CpkMethod}. Cpm: R. A. Boyles, The Taguchi capability index, ibid. 23
 * (1991) 17.
 *
 * @param confidence between 0.5 and 1
 */
public record IndexConfidence(double confidence, EffectiveSize size) {

  public IndexConfidence {
    if (!(confidence > 0.5 && confidence < 1)) {
      throw new IllegalArgumentException(
          "a confidence lies between 0.5 and 1, not at " + confidence);
    }
  }

  /** For readings that do not depend on each other. */
  public static IndexConfidence of(double confidence, long n) {
    return new IndexConfidence(confidence, EffectiveSize.independent(n));
  }

  public Optional<IndexLimits> cp(Indices indices) {
    return limits(indices.cp(), q -> byChiSquare(indices.cp().getAsDouble(), degrees(), q));
  }

  public Optional<IndexLimits> cpu(Indices indices) {
    return limits(indices.cpu(), q -> exact(indices.cpu().getAsDouble(), q));
  }

  public Optional<IndexLimits> cpl(Indices indices) {
    return limits(indices.cpl(), q -> exact(indices.cpl().getAsDouble(), q));
  }

  /** By {@link CpkMethod#DEFAULT}; exact where there is one limit. */
  public Optional<IndexLimits> cpk(Indices indices) {
    return cpk(indices, CpkMethod.DEFAULT);
  }

  /** With one specification limit the exact limits in any case. */
  public Optional<IndexLimits> cpk(Indices indices, CpkMethod method) {
    return indices.cpk().isEmpty()
        ? Optional.empty()
        : limits(indices.cpk(), limitOfCpk(indices, method));
  }

  private DoubleUnaryOperator limitOfCpk(Indices indices, CpkMethod method) {
    double cpk = indices.cpk().getAsDouble();
    return switch (indices.hasBothLimits() ? method : CpkMethod.NEARER_LIMIT_EXACT) {
      case NEARER_LIMIT_EXACT -> q -> exact(cpk, q);
      case CENTRING_ESTIMATED -> q -> allowingForTheMiddle(indices, q);
      case NORMAL_APPROXIMATION -> q -> approximate(cpk, q);
    };
  }

  public Optional<IndexLimits> cpm(Indices indices) {
    return limits(indices.cpm(), q -> ofCpm(indices, q));
  }

  /** The limit that an estimate as great as this one exceeds with the probability q. */
  private Optional<IndexLimits> limits(OptionalDouble index, DoubleUnaryOperator limitAt) {
    if (index.isEmpty() || !(degrees() >= 1) || !(size.forMean() >= 1)) {
      return Optional.empty();
    }
    double doubt = 1 - confidence;
    return Optional.of(
        new IndexLimits(
            limitAt.applyAsDouble(doubt),
            limitAt.applyAsDouble(doubt / 2),
            limitAt.applyAsDouble(1 - doubt / 2)));
  }

  private double degrees() {
    return size.forVariance() - 1;
  }

  private static double byChiSquare(double index, double degrees, double q) {
    return index * Math.sqrt(new ChiSquare(degrees).quantile(q) / degrees);
  }

  private double exact(double index, double q) {
    double scale = 3 * Math.sqrt(size.forMean());
    return NoncentralT.deltaWithAbove(scale * index, degrees(), q) / scale;
  }

  private double allowingForTheMiddle(Indices indices, double q) {
    double offset = indices.offsetUm() / indices.sigma();
    return new CentredCpk(size, indices.cpk().getAsDouble(), offset).limit(q);
  }

  private double approximate(double index, double q) {
    double variance = 1 / (9 * size.forMean()) + index * index / (2 * degrees());
    return index + Normal.STANDARD.quantile(q) * Math.sqrt(variance);
  }

  private double ofCpm(Indices indices, double q) {
    double offset = (indices.mean() - indices.spec().target().getAsDouble()) / indices.sigma();
    double square = offset * offset;
    double degrees = size.forVariance() * (1 + square) * (1 + square) / (1 + 2 * square);
    return byChiSquare(indices.cpm().getAsDouble(), degrees, q);
  }
}
