package dev.filmward.chart;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Control limits that a person put in force from a baseline; they hold until a person puts others
 * in force or retires them, and are never changed themselves.
 *
 * @param version from 1, for each characteristic
 * @param changes how a person moved them from state to state, first to last; at least one
 */
public record LimitsVersion(
    int version,
    MeanRangeLimits limits,
    BaselineSpan baseline,
    Instant holdsFrom,
    List<StateChange> changes) {

  public LimitsVersion {
    changes = List.copyOf(changes);
    if (changes.isEmpty()) {
      throw new IllegalArgumentException("somebody put limits in force, or on trial");
    }
  }

  /**
   * The subgroups that limits were computed from.
   *
   * @param excluded how many of them a person left out, each for a cause
   */
  public record BaselineSpan(Instant from, Instant to, long subgroups, long excluded) {}

  /** Who moved limits into a state, when and why. */
  public record StateChange(LimitsState state, Decision decision) {}

  /** Who decided, when and why. */
  public record Decision(String author, String reason, Instant at) {
    public Decision {
      if (author.isBlank()) {
        throw new IllegalArgumentException("who decides? Give a name");
      }
      if (reason.isBlank()) {
        throw new IllegalArgumentException("why is it decided? Give a reason");
      }
    }
  }

  /** The decision that put them in force. */
  public Decision decision() {
    return changes.get(0).decision();
  }

  public LimitsState state() {
    return changes.get(changes.size() - 1).state();
  }

  /** The state at a moment; before they were decided, what they were decided to be. */
  public LimitsState stateAt(Instant moment) {
    LimitsState state = changes.get(0).state();
    for (StateChange change : changes) {
      if (!change.decision().at().isAfter(moment)) {
        state = change.state();
      }
    }
    return state;
  }

  /** When they were retired, where that is so. */
  public Optional<Instant> retiredAt() {
    return state() == LimitsState.RETIRED
        ? Optional.of(changes.get(changes.size() - 1).decision().at())
        : Optional.empty();
  }

  /** Whether they hold at a moment, as long as no other version does. */
  public boolean holdsAt(Instant moment) {
    return !holdsFrom.isAfter(moment) && retiredAt().map(moment::isBefore).orElse(true);
  }

  /**
   * The version that holds at a moment; empty where none does.
   *
   * @param versions first to last
   */
  public static Optional<LimitsVersion> inForce(List<LimitsVersion> versions, Instant moment) {
    for (int i = versions.size() - 1; i >= 0; i--) {
      LimitsVersion version = versions.get(i);
      if (!version.holdsFrom().isAfter(moment)) {
        return version.holdsAt(moment) ? Optional.of(version) : Optional.empty();
      }
    }
    return Optional.empty();
  }
}
