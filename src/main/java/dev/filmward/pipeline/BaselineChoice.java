package dev.filmward.pipeline;

import dev.filmward.store.LimitsTable.Exclusion;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Which samples limits are computed from.
 *
 * @param subgroups the most to take; for {@link Where#BETWEEN} all there are
 * @param from and {@code to}: the span for {@link Where#BETWEEN}
 * @param exclusions samples that a person leaves out, each for a cause
 * @param remedy what the person does about neighbouring samples that are alike
 */
public record BaselineChoice(
    Where where,
    int subgroups,
    Instant from,
    Instant to,
    List<Exclusion> exclusions,
    Optional<AutocorrelationRemedy> remedy) {

  /** Where a baseline lies. */
  public enum Where {
    FIRST,
    LAST,
    BETWEEN
  }

  public BaselineChoice {
    exclusions = List.copyOf(exclusions);
    if (where != Where.BETWEEN && !(subgroups >= 1)) {
      throw new IllegalArgumentException(
          "a baseline of "
              + subgroups
              + " subgroups is none; take "
              + LimitsDesk.USUAL
              + " or more");
    }
    if (where == Where.BETWEEN && !from.isBefore(to)) {
      throw new IllegalArgumentException("a baseline begins before it ends: " + from + " to " + to);
    }
  }

  public static BaselineChoice first(int subgroups) {
    return new BaselineChoice(
        Where.FIRST, subgroups, Instant.MIN, Instant.MAX, List.of(), Optional.empty());
  }

  public static BaselineChoice last(int subgroups) {
    return new BaselineChoice(
        Where.LAST, subgroups, Instant.MIN, Instant.MAX, List.of(), Optional.empty());
  }

  public static BaselineChoice between(Instant from, Instant to) {
    return new BaselineChoice(Where.BETWEEN, 0, from, to, List.of(), Optional.empty());
  }

  public BaselineChoice without(List<Exclusion> left) {
    return new BaselineChoice(where, subgroups, from, to, left, remedy);
  }

  public BaselineChoice with(AutocorrelationRemedy chosen) {
    return new BaselineChoice(where, subgroups, from, to, exclusions, Optional.of(chosen));
  }

  /** Whether a moment lies in the span of {@link Where#BETWEEN}. */
  boolean spans(Instant moment) {
    return !moment.isBefore(from) && !moment.isAfter(to);
  }
}
