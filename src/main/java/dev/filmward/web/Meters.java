package dev.filmward.web;

import dev.filmward.alarm.AlarmState;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.PlantEvent;
import dev.filmward.pipeline.PlantEvent.FileCame;
import dev.filmward.pipeline.PlantEvent.SamplesJudged;
import dev.filmward.store.FileEntry;
import dev.filmward.store.StoreException;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.util.Arrays;

/**
 * What a machine that watches over Filmward is told, counted from the start of this process. Labels
 * come from short lists of ours, never from files or addresses, so that their number is bounded.
 * Thread-safe.
 */
final class Meters implements AutoCloseable {
  private static final Duration[] LATENCY_BOUNDS =
      seconds(0.1, 0.25, 0.5, 1, 2, 5, 10, 30, 60, 300);
  private static final Duration[] REQUEST_BOUNDS = seconds(0.005, 0.01, 0.025, 0.1, 0.5, 1, 5, 30);

  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final JvmGcMetrics collections = new JvmGcMetrics();
  private final Plant plant;
  private final Counter samples;
  private final Counter rows;
  private final Timer latency;

  Meters(Plant plant, EventStream events) {
    this.plant = plant;
    this.samples =
        Counter.builder("filmward.samples.stored")
            .description("Samples that were new or changed, and are kept and judged")
            .register(registry);
    this.rows =
        Counter.builder("filmward.rows.quarantined")
            .description("Rows of files that could not be used")
            .register(registry);
    this.latency =
        Timer.builder("filmward.sample.latency")
            .description("From the arrival of a sample's file until the sample is kept and judged")
            .serviceLevelObjectives(LATENCY_BOUNDS)
            .register(registry);
    Arrays.stream(Outcome.values()).forEach(this::files);
    alarms();
    streams(events);
    new JvmMemoryMetrics().bindTo(registry);
    new JvmThreadMetrics().bindTo(registry);
    collections.bindTo(registry);
  }

  /** What became of a file. */
  private enum Outcome {
    WHOLE("whole"),
    PARTLY("partly"),
    REFUSED("refused");

    private final String word;

    Outcome(String word) {
      this.word = word;
    }

    static Outcome of(FileEntry entry) {
      if (entry.refusal().isPresent()) {
        return REFUSED;
      }
      return entry.counts().quarantined() > 0 ? PARTLY : WHOLE;
    }
  }

  /** A request that was answered. */
  record Answered(String method, String route, int status, Duration time) {}

  void hear(PlantEvent event) {
    if (event instanceof SamplesJudged judged) {
      samples.increment(judged.samples());
      Duration time = Duration.between(judged.receivedAt(), judged.judgedAt());
      for (int i = 0; i < judged.samples(); i++) {
        latency.record(time);
      }
    } else if (event instanceof FileCame came) {
      files(Outcome.of(came.entry())).increment();
      if (came.entry().counts().quarantined() > 0) {
        rows.increment(rowsOf(came.entry().id()));
      }
    }
  }

  /** None where the database has just gone: what is kept is kept, whatever is counted of it. */
  private double rowsOf(long fileId) {
    try {
      return (double) plant.store().<Long>read(t -> t.files().quarantinedRows(fileId));
    } catch (StoreException e) {
      return 0;
    }
  }

  void answered(Answered request) {
    Timer.builder("filmward.http.request")
        .description("Time to answer a request, by the route's template; streams are left out")
        .tag("method", request.method())
        .tag("route", request.route())
        .tag("status", String.valueOf(request.status()))
        .serviceLevelObjectives(REQUEST_BOUNDS)
        .register(registry)
        .record(request.time());
  }

  /** All of it, as text of a media type. */
  String text(String mediaType) {
    return registry.scrape(mediaType);
  }

  @Override
  public void close() {
    collections.close();
    registry.close();
  }

  private Counter files(Outcome outcome) {
    return Counter.builder("filmward.files")
        .description("Files that came: whole, partly in quarantine, or refused")
        .tag("outcome", outcome.word)
        .register(registry);
  }

  private void alarms() {
    AlarmGauges gauges = new AlarmGauges(plant, System::nanoTime);
    for (AlarmState state : AlarmState.values()) {
      Gauge.builder("filmward.alarms", gauges, all -> all.count(state))
          .description("Alarms that are not closed")
          .tag("state", state.word())
          .strongReference(true)
          .register(registry);
    }
    Gauge.builder("filmward.alarm.oldest.unacknowledged", gauges, AlarmGauges::oldestWaitingSeconds)
        .description("How long the oldest alarm waits that nobody has taken on; 0 without one")
        .baseUnit("seconds")
        .strongReference(true)
        .register(registry);
  }

  private void streams(EventStream events) {
    Gauge.builder("filmward.event.streams.open", events, EventStream::open)
        .description("Pages that listen to events now")
        .strongReference(true)
        .register(registry);
    FunctionCounter.builder("filmward.events.delivered", events.tally(), StreamTally::delivered)
        .description("Events that were written to a page")
        .register(registry);
    FunctionCounter.builder("filmward.event.streams.dropped", events.tally(), StreamTally::dropped)
        .description("Pages that were cut off since they took their events too slowly")
        .register(registry);
  }

  private static Duration[] seconds(double... bounds) {
    return Arrays.stream(bounds)
        .mapToObj(bound -> Duration.ofMillis(Math.round(bound * 1000)))
        .toArray(Duration[]::new);
  }
}
