package dev.filmward.alarm;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a line was doing at any time, as people said it; what was said later counts where two begin
 * at once. Nothing said: running. Immutable.
 */
public record LineModes(List<LineModeChange> changes) {
  public LineModes {
    changes = changes.stream().sorted(Comparator.comparing(LineModeChange::since)).toList();
  }

  /** What was last said to hold at a moment. */
  public Optional<LineModeChange> at(Instant moment) {
    for (int i = changes.size() - 1; i >= 0; i--) {
      if (!changes.get(i).since().isAfter(moment)) {
        return Optional.of(changes.get(i));
      }
    }
    return Optional.empty();
  }
}
