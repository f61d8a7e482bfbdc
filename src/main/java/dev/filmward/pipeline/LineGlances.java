package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Board.CharacteristicState;
import dev.filmward.pipeline.Board.HeldOut;
import dev.filmward.pipeline.Board.LimitsInForce;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Remembers what a board shows of each line until something happens to it, so that many open boards
 * cost what one does. Thread-safe.
 */
final class LineGlances {
  private final LineChanges changes;
  private final Map<String, Kept> kept = new ConcurrentHashMap<>();

  LineGlances(LineChanges changes) {
    this.changes = changes;
  }

  /**
   * What the last samples of a line say, whenever it is looked at.
   *
   * @param interval the usual time between samples
   */
  record Glance(
      SampleKey last,
      Instant lastTakenAt,
      Optional<Duration> interval,
      LimitsInForce limits,
      Optional<HeldOut> heldOut,
      List<CharacteristicState> states) {}

  private record Kept(long happened, Structure structure, Optional<Glance> glance) {}

  /**
   * What is remembered, or else what is read now.
   *
   * @param read reads the store as of now or later; what it gives is not kept if something happens
   *     to the line meanwhile
   */
  Optional<Glance> of(String line, Structure structure, Supplier<Optional<Glance>> read) {
    long before = changes.of(line);
    Kept known = kept.get(line);
    if (known != null && known.happened == before && known.structure.equals(structure)) {
      return known.glance;
    }
    Optional<Glance> glance = read.get();
    kept.put(line, new Kept(before, structure, glance));
    return glance;
  }
}
