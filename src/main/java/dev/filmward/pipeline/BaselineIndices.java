package dev.filmward.pipeline;

import java.time.Instant;
import java.util.Optional;
import java.util.function.IntFunction;

/** Which points of a series, by index in time order, its limits come from. Immutable. */
record BaselineIndices(Optional<BaselineChoice> choice, int count, IntFunction<Instant> takenAt) {

  boolean has(int index) {
    return choice.map(of -> has(of, index)).orElse(true);
  }

  private boolean has(BaselineChoice of, int index) {
    return switch (of.where()) {
      case FIRST -> index < of.subgroups();
      case LAST -> index >= count - of.subgroups();
      case BETWEEN -> of.spans(takenAt.apply(index));
    };
  }
}
