package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Board.CharacteristicState;
import dev.filmward.pipeline.Board.HeldOut;
import dev.filmward.pipeline.Board.LimitsInForce;
import dev.filmward.pipeline.PlantEvent.AlarmChanged;
import dev.filmward.pipeline.PlantEvent.LimitsFrozen;
import dev.filmward.pipeline.PlantEvent.LineModeSaid;
import dev.filmward.pipeline.PlantEvent.SampleCame;
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
  private final Map<String, Long> happened = new ConcurrentHashMap<>();
  private final Map<String, Kept> kept = new ConcurrentHashMap<>();

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

  /** Hears of what happens, after it is stored. */
  void hear(PlantEvent event) {
    if (event instanceof SampleCame came) {
      forget(came.key().line());
    } else if (event instanceof AlarmChanged changed) {
      forget(changed.line());
    } else if (event instanceof LimitsFrozen frozen) {
      forget(frozen.line());
    } else if (event instanceof LineModeSaid said) {
      forget(said.line());
    }
  }

  /**
   * What is remembered, or else what is read now.
   *
   * @param read reads the store as of now or later; what it gives is not kept if something happens
   *     to the line meanwhile
   */
  Optional<Glance> of(String line, Structure structure, Supplier<Optional<Glance>> read) {
    long before = happened.getOrDefault(line, 0L);
    Kept known = kept.get(line);
    if (known != null && known.happened == before && known.structure.equals(structure)) {
      return known.glance;
    }
    Optional<Glance> glance = read.get();
    kept.put(line, new Kept(before, structure, glance));
    return glance;
  }

  private void forget(String line) {
    happened.merge(line, 1L, Long::sum);
  }
}
