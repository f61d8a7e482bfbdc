package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.PlantEvent;
import io.javalin.http.sse.SseClient;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells every open page what happened, as server-sent events.
 *
 * <p>The last {@value #KEPT} events are kept, so that a page that was cut off catches up when it
 * comes back; one that was away for longer, or since before a restart, is told to reload. A page
 * that takes its events too slowly is cut off and catches up in the same way. Thread-safe.
 */
final class EventStream implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(EventStream.class);

  static final int KEPT = 1000;
  private static final int HEARTBEAT_S = 15;
  private static final int LAST_WRITE_MS = 500;

  private final Clock clock;
  private final ZoneId zone;
  private final String boot;
  private final Deque<Event> kept = new ArrayDeque<>();
  private final Set<Subscriber> subscribers = ConcurrentHashMap.newKeySet();
  private final EventWriters writers = new EventWriters();
  private final ScheduledExecutorService heartbeat =
      Executors.newSingleThreadScheduledExecutor(
          task -> EventWriters.daemon(task, "event-heartbeat"));
  private final StreamTally tally = new StreamTally();
  private long sequence;
  private boolean closed;

  EventStream(Clock clock, ZoneId zone) {
    this.clock = clock;
    this.zone = zone;
    this.boot = Long.toString(clock.millis(), Character.MAX_RADIX);
    ScheduledFuture<?> unused =
        heartbeat.scheduleWithFixedDelay(this::beat, HEARTBEAT_S, HEARTBEAT_S, TimeUnit.SECONDS);
  }

  /** One event on the wire. */
  static final class Event {
    private final long sequence;
    private final byte[] written;

    /**
     * @param data without ends of lines, as JSON is written
     */
    Event(long sequence, String id, String name, String data) {
      this.sequence = sequence;
      String lines = "id: " + id + "\nevent: " + name + "\ndata: " + data + "\n\n";
      this.written = lines.getBytes(StandardCharsets.UTF_8);
    }

    private long sequence() {
      return sequence;
    }

    int length() {
      return written.length;
    }

    void writeTo(ByteArrayOutputStream out) {
      out.writeBytes(written);
    }
  }

  void publish(PlantEvent event) {
    if (event instanceof PlantEvent.SamplesJudged) {
      return; // a count, of which pages need not hear
    }
    synchronized (kept) {
      sequence++;
      Event told = EventWords.of(event, sequence, boot + "-" + sequence, zone);
      kept.addLast(told);
      if (kept.size() > KEPT) {
        kept.removeFirst();
      }
      subscribers.forEach(subscriber -> subscriber.offer(told));
    }
  }

  /** Pages that listen now. */
  int open() {
    return subscribers.size();
  }

  /** What became of events so far. */
  StreamTally tally() {
    return tally;
  }

  /**
   * Adds an open page.
   *
   * @param isWelcome whether whoever opened it may still look
   */
  void connect(SseClient client, BooleanSupplier isWelcome) {
    client.keepAlive();
    Subscriber subscriber = new Subscriber(client, writers, tally, isWelcome);
    client.onClose(() -> subscribers.remove(subscriber));
    String lastId = client.ctx().header("Last-Event-ID");
    synchronized (kept) {
      if (closed) {
        client.close();
        return;
      }
      subscribers.add(subscriber);
      subscriber.offer(hello(lastId));
      missed(lastId).forEach(subscriber::offer);
    }
  }

  /** Cuts off those who may not look any more; also done with each heartbeat. */
  void recheck() {
    subscribers.stream().filter(subscriber -> !subscriber.isWelcome()).forEach(Subscriber::finish);
  }

  private void beat() {
    try {
      recheck();
    } catch (RuntimeException e) {
      LOG.warn("Who may still look cannot be asked; tried again soon", e);
    }
    subscribers.forEach(Subscriber::beat);
  }

  @Override
  public void close() {
    heartbeat.shutdownNow();
    synchronized (kept) {
      closed = true;
    }
    subscribers.forEach(Subscriber::finish);
    try {
      if (!writers.stop(LAST_WRITE_MS)) {
        subscribers.forEach(Subscriber::close);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    writers.breakOff();
  }

  /** Leaves a page that comes back where it was, in case it is cut off before it has caught up. */
  private Event hello(@Nullable String lastId) {
    ObjectNode now = Wire.object().put("now", Wire.time(clock.instant(), zone));
    String id = lastId == null ? boot + "-" + sequence : lastId;
    return new Event(sequence, id, "hello", now.toString());
  }

  private List<Event> missed(@Nullable String lastId) {
    if (lastId == null) {
      return List.of();
    }
    Optional<Long> last = sequenceOf(lastId);
    long oldest = kept.isEmpty() ? sequence + 1 : kept.getFirst().sequence();
    if (last.isEmpty() || last.get() + 1 < oldest) {
      return List.of(new Event(sequence, boot + "-" + sequence, "reload", "{}"));
    }
    List<Event> missed = new ArrayList<>();
    kept.stream().filter(event -> event.sequence() > last.get()).forEach(missed::add);
    return missed;
  }

  private Optional<Long> sequenceOf(String id) {
    String prefix = boot + "-";
    try {
      return id.startsWith(prefix)
          ? Optional.of(Long.parseLong(id.substring(prefix.length())))
          : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
