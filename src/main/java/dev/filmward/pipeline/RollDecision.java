package dev.filmward.pipeline;

import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import java.util.Map;
import java.util.OptionalLong;

/**
 * What a person decides about some rolls, all of them or none.
 *
 * @param rolls each with the version of the decision that the person saw; 0 where there was none
 * @param alarmId the alarm for which it is decided; empty to keep the one of the decision before
 */
public record RollDecision(
    Map<RollKey, Integer> rolls, RollState state, String by, String reason, OptionalLong alarmId) {
  private static final int MOST = 200;

  public RollDecision {
    if (rolls.isEmpty() || rolls.size() > MOST) {
      throw new IllegalArgumentException("name the rolls: 1 to " + MOST + " of them");
    }
    rolls = Map.copyOf(rolls);
  }
}
