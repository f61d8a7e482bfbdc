package dev.filmward.pipeline;

import dev.filmward.telling.Post;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells people of alarms while the plant is served: looks into the outbox every {@value
 * #SECONDS_BETWEEN_LOOKS} seconds and for alarms that nobody took every {@value
 * #SECONDS_BETWEEN_TICKS}, on threads of its own.
 */
public final class Telling implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Telling.class);
  private static final long SECONDS_BETWEEN_LOOKS = 2;
  private static final long SECONDS_BETWEEN_TICKS = 10;
  private static final long SECONDS_TO_STOP = 5;
  private static final int AT_ONCE = 8;

  /** For how long messages that were dealt with are shown. */
  private static final Duration SHOWN = Duration.ofDays(90);

  private final Plant plant;
  private final Set<Runnable> trouble = ConcurrentHashMap.newKeySet();
  private final ExecutorService senders =
      Executors.newFixedThreadPool(AT_ONCE, task -> daemon(task, "telling-send"));
  private final ScheduledExecutorService pace =
      Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "telling"));

  private Telling(Plant plant) {
    this.plant = plant;
  }

  /** Begins. */
  public static Telling start(Plant plant, Post post, Passwords passwords) {
    Telling telling = new Telling(plant);
    Sender sender = new Sender(plant, post, passwords, telling.senders);
    Escalating escalating = new Escalating(plant);
    telling.every(SECONDS_BETWEEN_LOOKS, sender::round);
    telling.every(SECONDS_BETWEEN_TICKS, () -> escalating.tick(plant.clock().instant()));
    telling.every(TimeUnit.DAYS.toSeconds(1), telling::forget);
    return telling;
  }

  private void forget() {
    plant.store().change(tables -> tables.outbox().forget(plant.clock().instant().minus(SHOWN)));
  }

  private void every(long seconds, Runnable task) {
    var unused = pace.scheduleWithFixedDelay(() -> run(task), seconds, seconds, TimeUnit.SECONDS);
  }

  /** Trouble that lasts, a database that is away for example, is logged once. */
  private void run(Runnable task) {
    try {
      task.run();
      trouble.remove(task);
    } catch (RuntimeException e) {
      if (trouble.add(task)) {
        LOG.warn("Telling people does not go on just now; tried again until it does", e);
      }
    }
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Waits a few seconds for messages that are on their way; one that takes longer is sent again,
   * under the same key, when the plant is served next.
   */
  @Override
  public void close() {
    pace.shutdown();
    senders.shutdownNow();
    try {
      for (ExecutorService each : List.of(pace, senders)) {
        if (!each.awaitTermination(SECONDS_TO_STOP, TimeUnit.SECONDS)) {
          LOG.warn("A message is broken off; it is sent again at the next start");
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
