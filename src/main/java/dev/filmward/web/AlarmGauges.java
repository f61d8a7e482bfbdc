package dev.filmward.web;

import dev.filmward.alarm.AlarmState;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.AlarmTally.Standing;
import dev.filmward.store.StoreException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Alarms that are not closed, by state, asked of the database at most once in {@value #FRESH_S}
 * seconds however often somebody looks. Without a database nothing is known: NaN. Thread-safe.
 */
final class AlarmGauges {
  private static final long FRESH_S = 5;
  private static final double MILLIS = 1000;

  private final Plant plant;
  private final LongSupplier nanoTime;
  private Optional<List<Standing>> standings = Optional.empty();
  private long readAt;
  private boolean isRead;

  AlarmGauges(Plant plant, LongSupplier nanoTime) {
    this.plant = plant;
    this.nanoTime = nanoTime;
  }

  double count(AlarmState state) {
    return now()
        .map(all -> all.stream().filter(one -> one.state() == state).mapToLong(Standing::alarms))
        .map(alarms -> (double) alarms.sum())
        .orElse(Double.NaN);
  }

  /** Since when the oldest alarm waits that nobody has taken on; 0 where none does. */
  double oldestWaitingSeconds() {
    return now().map(this::oldestWaitingSeconds).orElse(Double.NaN);
  }

  private double oldestWaitingSeconds(List<Standing> all) {
    return all.stream()
        .filter(one -> one.state() == AlarmState.UNACKNOWLEDGED)
        .mapToDouble(
            one -> Duration.between(one.oldest(), plant.clock().instant()).toMillis() / MILLIS)
        .map(age -> Math.max(0, age))
        .findFirst()
        .orElse(0);
  }

  private synchronized Optional<List<Standing>> now() {
    long now = nanoTime.getAsLong();
    if (!isRead || now - readAt > Duration.ofSeconds(FRESH_S).toNanos()) {
      standings = read();
      readAt = now;
      isRead = true;
    }
    return standings;
  }

  private Optional<List<Standing>> read() {
    try {
      return Optional.of(plant.store().read(tables -> tables.alarmTally().standings()));
    } catch (StoreException e) {
      return Optional.empty();
    }
  }
}
