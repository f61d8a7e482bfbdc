package dev.filmward.gauge.calibration;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A version of how the readings of a reported layer are re-scaled; versions are added and never
 * changed. One either has steps in time of its own, or takes an earlier version back. Immutable.
 *
 * @param version from 1
 * @param steps by the time from which they hold; the last that holds counts
 * @param takesBack the version that this one takes back; 0 where it has steps
 * @param calibrationId the calibration it follows from
 */
public record Scaling(
    int version, List<ScaleStep> steps, int takesBack, OptionalLong calibrationId, Word word) {
  public Scaling {
    steps = steps.stream().sorted(Comparator.comparing(ScaleStep::holdsFrom)).toList();
    if (steps.isEmpty() == (takesBack == 0)) {
      throw new IllegalArgumentException("a re-scaling has steps, or takes another one back");
    }
    if (!(takesBack >= 0 && takesBack < version)) {
      throw new IllegalArgumentException("only an earlier re-scaling can be taken back");
    }
  }

  /** Who said so, why and when. */
  public record Word(String by, String reason, Instant at) {
    public Word {
      if (by.isBlank()) {
        throw new IllegalArgumentException("who decides? Give a name");
      }
      if (reason.isBlank()) {
        throw new IllegalArgumentException("why is it decided? Give a reason");
      }
    }
  }

  /** Takes another version back. */
  public static Scaling back(int version, int takesBack, Word word) {
    return new Scaling(version, List.of(), takesBack, OptionalLong.empty(), word);
  }

  /** Whether it takes another one back and has no steps of its own. */
  public boolean isBack() {
    return takesBack > 0;
  }

  /** The step that holds at a moment; empty before the first. */
  public Optional<ScaleStep> at(Instant moment) {
    Optional<ScaleStep> held = Optional.empty();
    for (ScaleStep step : steps) {
      if (!step.holdsFrom().isAfter(moment)) {
        held = Optional.of(step);
      }
    }
    return held;
  }
}
