package dev.filmward.pipeline;

import dev.filmward.pipeline.Thinning.Order;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Thins what has become too old, at once and then once a day, on a thread of its own. */
public final class DailyThinning implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DailyThinning.class);
  private static final long SECONDS_TO_STOP = 60;

  private final Plant plant;
  private final int days;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "thinning"));

  private DailyThinning(Plant plant, int days) {
    this.plant = plant;
    this.days = days;
  }

  /**
   * Begins.
   *
   * @param days for which readings are kept
   */
  public static DailyThinning start(Plant plant, int days) {
    DailyThinning thinning = new DailyThinning(plant, days);
    thinning.thread.execute(thinning::run);
    var unused = thinning.thread.scheduleAtFixedRate(thinning::run, 1, 1, TimeUnit.DAYS);
    return thinning;
  }

  private void run() {
    try {
      Order order =
          new Order(
              plant.clock().instant().minus(Duration.ofDays(days)),
              AlarmKeeper.SYSTEM,
              "this server keeps readings for " + days + " days");
      new Thinning(plant).run(order);
    } catch (RuntimeException e) {
      LOG.warn("Old readings could not be thinned; tried again in a day", e);
    }
  }

  /** Waits for what is under way, a minute at most. */
  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(SECONDS_TO_STOP, TimeUnit.SECONDS)) {
        LOG.warn("Thinning is broken off; what it did is in the audit chain");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
