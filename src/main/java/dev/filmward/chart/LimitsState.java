package dev.filmward.chart;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** How far control limits are from being relied on. Only a person moves them on. */
public enum LimitsState {
  /** Too few subgroups for any limits. */
  COLLECTING,
  /** Computed and shown, without alarms. */
  TRIAL,
  /** In use from a small baseline: only a mean beyond its limits raises an alarm. */
  PROVISIONAL,
  /** In use and signed. */
  FROZEN,
  /** In use, but somebody has a reason to doubt them. */
  SUSPECT,
  /** Not in use any more. */
  RETIRED;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The state of that word.
   *
   * @throws IllegalArgumentException naming the choices
   */
  public static LimitsState fromWord(String word) {
    for (LimitsState state : values()) {
      if (state.word().equals(word)) {
        return state;
      }
    }
    throw new IllegalArgumentException(
        "\"" + word + "\" is no state of limits; choose provisional, frozen, suspect or retired");
  }

  /** Whether alarms are raised under limits in this state. */
  public boolean raisesAlarms() {
    return this == PROVISIONAL || this == FROZEN || this == SUSPECT;
  }

  /** Whether a person may move limits from this state into another. */
  public boolean mayBecome(LimitsState next) {
    return next().contains(next);
  }

  private Set<LimitsState> next() {
    return switch (this) {
      case COLLECTING, TRIAL -> EnumSet.of(PROVISIONAL, FROZEN);
      case PROVISIONAL -> EnumSet.of(FROZEN, SUSPECT, RETIRED);
      case FROZEN -> EnumSet.of(SUSPECT, RETIRED);
      case SUSPECT -> EnumSet.of(FROZEN, RETIRED);
      case RETIRED -> EnumSet.noneOf(LimitsState.class);
    };
  }
}
