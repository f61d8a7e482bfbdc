package dev.filmward.pipeline;

import dev.filmward.store.StructureTable.KeptFile;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Structures files in the order in which they took hold until a moment, and those whose moment is
 * still to come. A file without a moment of its own takes hold as it comes, so that no clock that
 * was put right can undo it; one that was planned takes its place among those that came after its
 * moment. Immutable.
 *
 * @param taken of two with the same structure the later one holds
 * @param planned the next one first
 */
record StructureTimeline(List<KeptFile> taken, List<KeptFile> planned) {
  private static final Comparator<KeptFile> BY_MOMENT =
      Comparator.comparing((KeptFile file) -> file.given().holdsFrom().orElseThrow())
          .thenComparing(KeptFile::id);

  StructureTimeline {
    taken = List.copyOf(taken);
    planned = List.copyOf(planned);
  }

  /**
   * Puts files in their order.
   *
   * @param files as they were given, oldest first
   */
  static StructureTimeline at(List<KeptFile> files, Instant now) {
    List<KeptFile> taken = new ArrayList<>();
    List<KeptFile> waiting = new ArrayList<>();
    for (KeptFile file : files) {
      if (file.given().holdsFrom().isPresent()) {
        waiting.add(file);
        waiting.sort(BY_MOMENT);
      } else {
        move(waiting, file.given().receivedAt(), taken);
        taken.add(file);
      }
    }
    move(waiting, now, taken);
    return new StructureTimeline(taken, waiting);
  }

  private static void move(List<KeptFile> waiting, Instant until, List<KeptFile> taken) {
    while (!waiting.isEmpty() && !waiting.get(0).given().holdsFrom().get().isAfter(until)) {
      taken.add(waiting.remove(0));
    }
  }

  /** When another one takes hold. */
  Optional<Instant> next() {
    return planned.stream().findFirst().flatMap(file -> file.given().holdsFrom());
  }
}
