package dev.filmward.pipeline;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Lets alarms go whose time on the shelf is over, and versions of structures take hold, every few
 * seconds. Closing it ends that.
 */
public final class AlarmClock implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(AlarmClock.class);
  private static final long EVERY_SECONDS = 5;

  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "alarm-clock");
            made.setDaemon(true);
            return made;
          });

  private AlarmClock() {}

  public static AlarmClock start(Plant plant) {
    AlarmClock clock = new AlarmClock();
    ScheduledFuture<?> unused =
        clock.thread.scheduleWithFixedDelay(
            () -> look(plant), EVERY_SECONDS, EVERY_SECONDS, TimeUnit.SECONDS);
    return clock;
  }

  private static void look(Plant plant) {
    try {
      plant.holds().endOver();
      plant.lookAtStructures();
    } catch (RuntimeException e) {
      LOG.warn("What is shelved could not be looked at; it is tried again", e);
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
