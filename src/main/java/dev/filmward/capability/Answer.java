package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Moments;
import java.util.Locale;
import java.util.Optional;

/**
 * One answer of a statement: indices with the spread of all that was measured, how sure Ppk is, and
 * where that stands against the requirement. Immutable.
 *
 * @param of what it is about, as a sentence begins
 * @param limits of Ppk; empty where there is none
 * @param reason for the standing, where the figures alone do not explain it
 */
public record Answer(
    String of,
    Indices indices,
    EffectiveSize size,
    Optional<IndexLimits> limits,
    Standing standing,
    Optional<String> reason,
    CapabilityQuestion question) {

  /** There must be a number ({@link IllegalStateException}). */
  static Answer of(
      String of,
      Moments moments,
      SpecLimits spec,
      EffectiveSize size,
      CapabilityQuestion question) {
    double sigma = moments.standardDeviation().orElse(0);
    Indices indices = Indices.of(moments.mean(), sigma, spec);
    Optional<IndexLimits> limits = new IndexConfidence(question.confidence(), size).cpk(indices);
    Standing standing = standing(indices, limits, question.requirement());
    return new Answer(of, indices, size, limits, standing, Optional.empty(), question);
  }

  private static Standing standing(
      Indices indices, Optional<IndexLimits> limits, double requirement) {
    if (indices.cpk().isEmpty()) {
      return Standing.NOT_JUDGED;
    }
    if (indices.cpk().getAsDouble() < requirement) {
      return Standing.BELOW;
    }
    return limits.isPresent() && limits.get().atLeast() >= requirement
        ? Standing.SHOWN
        : Standing.NOT_SHOWN;
  }

  /** The same figures, standing elsewhere for a reason that they do not show. */
  Answer standing(Standing other, String because) {
    return new Answer(of, indices, size, limits, other, Optional.of(because), question);
  }

  /** Two short sentences. */
  public String words() {
    if (indices.cpk().isEmpty()) {
      return of + ": no index, for want of a specification limit, of readings or of spread.";
    }
    return String.format(
        Locale.ROOT,
        "%s: Ppk %.2f%s. Required %.2f: %s%s.",
        of,
        indices.cpk().getAsDouble(),
        limits.map(this::atLeast).orElse(""),
        question.requirement(),
        standing.words(),
        reason.map(because -> ", since " + because).orElse(""));
  }

  private String atLeast(IndexLimits found) {
    return String.format(
        Locale.ROOT,
        ", at least %.2f with %.0f %% confidence",
        found.atLeast(),
        100 * question.confidence());
  }
}
