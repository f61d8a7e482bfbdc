package dev.filmward.store;

import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.store.SampleTable.Stored;
import java.util.List;
import java.util.Optional;

/** A stored sample with its flags, and how it stands; empty where it has none. */
public record ScreenedSample(Stored stored, Optional<ScreeningState> state, List<Flag> flags) {
  public ScreenedSample {
    flags = List.copyOf(flags);
  }

  /** Whether it is left out of charts. */
  public boolean isOutOfCharts() {
    return state.map(ScreeningState::isOutOfCharts).orElse(false);
  }
}
