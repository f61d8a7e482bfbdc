package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Performance indices of a characteristic that need not be normal: the median takes the place of
 * the mean, and the points that have 0.135 % of the readings beyond them that of 3 sigma to either
 * side. Lengths in micrometres. With one limit there is no Pp. Immutable.
 *
 * <p>Source: ISO 22514-2, the quantile method.
 */
public record PercentileIndices(
    double lowUm, double medianUm, double highUm, SpecLimits spec, PercentileMethod method) {

  public PercentileIndices {
    if (!(lowUm <= medianUm && medianUm <= highUm)) {
      throw new IllegalArgumentException(
          "percentiles out of order: " + lowUm + ", " + medianUm + ", " + highUm);
    }
  }

  /** By the first method that the readings can carry; see {@link Percentiles}. */
  public static Optional<PercentileIndices> of(double[] readings, SpecLimits spec) {
    return Percentiles.indices(readings, spec);
  }

  public OptionalDouble pp() {
    return spec.lower().isPresent() && spec.upper().isPresent()
        ? Indices.quotient(
            OptionalDouble.of(spec.upper().getAsDouble() - spec.lower().getAsDouble()),
            highUm - lowUm)
        : OptionalDouble.empty();
  }

  public OptionalDouble ppu() {
    return spec.upper().isPresent()
        ? Indices.quotient(
            OptionalDouble.of(spec.upper().getAsDouble() - medianUm), highUm - medianUm)
        : OptionalDouble.empty();
  }

  public OptionalDouble ppl() {
    return spec.lower().isPresent()
        ? Indices.quotient(
            OptionalDouble.of(medianUm - spec.lower().getAsDouble()), medianUm - lowUm)
        : OptionalDouble.empty();
  }

  public OptionalDouble ppk() {
    return Indices.smaller(ppu(), ppl());
  }

  /** A sentence. */
  public String words() {
    return ppk().isEmpty()
        ? "Percentiles " + method.words() + " give no index."
        : String.format(
            Locale.ROOT,
            "By percentiles %s: Ppk %.2f, with 99.73 %% of the readings between %.2f and %.2f.",
            method.words(),
            ppk().getAsDouble(),
            lowUm,
            highUm);
  }
}
