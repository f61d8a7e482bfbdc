package dev.filmward.pipeline;

import dev.filmward.pipeline.PlantEvent.AlarmChanged;
import dev.filmward.pipeline.PlantEvent.LimitsFrozen;
import dev.filmward.pipeline.PlantEvent.LineModeSaid;
import dev.filmward.pipeline.PlantEvent.SampleCame;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Counts what happens to each line: samples, alarms, limits and tests, what it is doing. While a
 * count stays, so does what the store says of its line. Counts after it is stored, and before
 * listeners hear of it. Thread-safe.
 */
public final class LineChanges {
  private final Map<String, Long> ofLines = new ConcurrentHashMap<>();
  private final AtomicLong all = new AtomicLong();

  LineChanges() {}

  void hear(PlantEvent event) {
    if (event instanceof SampleCame came) {
      count(came.key().line());
    } else if (event instanceof AlarmChanged changed) {
      count(changed.line());
    } else if (event instanceof LimitsFrozen frozen) {
      count(frozen.line());
    } else if (event instanceof LineModeSaid said) {
      count(said.line());
    }
  }

  /** How much happened to a line so far. */
  public long of(String line) {
    return ofLines.getOrDefault(line, 0L);
  }

  /** How much happened to all lines so far. */
  public long ofAll() {
    return all.get();
  }

  private void count(String line) {
    ofLines.merge(line, 1L, Long::sum);
    all.incrementAndGet();
  }
}
