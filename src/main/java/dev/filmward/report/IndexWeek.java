package dev.filmward.report;

import java.util.OptionalDouble;

/**
 * The index of a week, and what it may be called.
 *
 * @param kind capability only where the process is stable and the readings are enough
 * @param why it is of that kind
 * @param cp and {@code cpk}: with the spread within samples; only of a capability
 * @param pp and {@code ppk}: with the spread of all readings
 * @param atLeast lower confidence limit of Ppk, one-sided
 * @param from and {@code to}: two-sided interval of Ppk at the same confidence
 * @param standing against the index that is asked for
 */
public record IndexWeek(
    Kind kind,
    Why why,
    Method method,
    OptionalDouble cp,
    OptionalDouble cpk,
    OptionalDouble pp,
    OptionalDouble ppk,
    OptionalDouble atLeast,
    OptionalDouble from,
    OptionalDouble to,
    Standing standing) {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();

  /** What figures may be called. */
  public enum Kind {
    CAPABILITY,
    PERFORMANCE,
    /** No index at all. */
    NONE
  }

  /** Why they are called so. */
  public enum Why {
    STABLE,
    UNSTABLE,
    /** No limits in force, so nobody can say whether it is stable. */
    NO_LIMITS,
    /** Fewer than 50 readings, counted as what they are worth. */
    TOO_FEW,
    NO_SPECIFICATION,
    NO_DATA
  }

  /** How Pp and Ppk were worked out. */
  public enum Method {
    NORMAL,
    /** From percentiles, ISO 22514-2, since the readings are not normal. */
    PERCENTILES
  }

  /** Against the index that is asked for. */
  public enum Standing {
    SHOWN,
    NOT_SHOWN,
    BELOW,
    NOT_JUDGED
  }

  /** That figure, for a row of weeks; empty where too few readings stand behind it. */
  OptionalDouble trusted(OptionalDouble figure) {
    return why == Why.TOO_FEW ? NOTHING : figure;
  }

  static IndexWeek none(Why why) {
    return new IndexWeek(
        Kind.NONE,
        why,
        Method.NORMAL,
        NOTHING,
        NOTHING,
        NOTHING,
        NOTHING,
        NOTHING,
        NOTHING,
        NOTHING,
        Standing.NOT_JUDGED);
  }
}
