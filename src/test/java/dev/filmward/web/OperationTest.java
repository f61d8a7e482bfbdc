package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Permission;
import dev.filmward.pipeline.PlantEvent.SamplesJudged;
import dev.filmward.pipeline.TestPlant;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a machine that watches over the server is told of a story whose counts are known. */
class OperationTest {
  private static final Pattern LINE =
      Pattern.compile("([a-z_0-9]+)(\\{([a-z_]+=\"[^\"\\n]*\",?)*})? ([0-9.eE+-]+|NaN|\\+Inf)");

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** 25 samples, one known, two that raise an alarm, a file with a bad row, one refused. */
  @Test
  void theCountsAreThoseOfTheStory() throws Exception {
    served.withFrozenLimits();
    api.upload("again.csv", ServedPlant.FILM.usual(24, 25));
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    api.upload("faulty.csv", ServedPlant.FILM.usual(27, 28).replace("19.700", "x\\\"y"));
    api.upload("refused.csv", "no,header\n1,2\n");
    api.get("/api/v1/alarms/1");
    api.get("/api/v1/alarms/777");
    Map<String, Double> found = metrics();
    assertThat(found)
        .containsEntry("filmward_samples_stored_total", 25.0 + 2 + 1)
        .containsEntry("filmward_rows_quarantined_total", 1.0)
        .containsEntry("filmward_files_total{outcome=\"whole\"}", 3.0)
        .containsEntry("filmward_files_total{outcome=\"partly\"}", 1.0)
        .containsEntry("filmward_files_total{outcome=\"refused\"}", 1.0)
        .containsEntry("filmward_sample_latency_seconds_count", 28.0)
        .containsEntry("filmward_http_request_seconds_count" + answered("GET", 200), 1.0)
        .containsEntry("filmward_http_request_seconds_count" + answered("GET", 404), 1.0)
        .containsEntry("filmward_event_streams_open", 0.0);
    assertThat(found.keySet())
        .anyMatch(name -> name.startsWith("jvm_memory_used_bytes"))
        .anyMatch(name -> name.startsWith("jvm_threads_live"))
        .noneMatch(name -> name.contains("777") || name.contains("csv") || name.contains("Blown"));
  }

  private static String answered(String method, int status) {
    return "{method=\"%s\",route=\"/api/v1/alarms/{id}\",status=\"%d\"}".formatted(method, status);
  }

  @Test
  void alarmsAreCountedByStateAndTheOldestThatWaitsHasItsAge() throws Exception {
    served.withFrozenLimits();
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    Map<String, Double> found = metrics();
    assertThat(found)
        .containsEntry("filmward_alarms{state=\"unacknowledged\"}", 1.0)
        .containsEntry("filmward_alarms{state=\"acknowledged\"}", 0.0)
        // shown now, by a clock that stands still
        .containsEntry("filmward_alarm_oldest_unacknowledged_seconds", 0.0);
  }

  @Test
  void theAgeGrowsAndOneQueryServesManyLooks() throws Exception {
    Path other = folder.resolve("other");
    Instant noon = ServedPlant.NOW;
    long[] nanos = {0};
    try (TestPlant test = new TestPlant(other, noon)) {
      test.plant().learnStructures("s.yaml", SmallFilm.STRUCTURES.getBytes());
      test.read("usual.csv", ServedPlant.FILM.usual(0, 25));
      test.freeze(SmallFilm.LINE, SmallFilm.CODE);
      test.read("thin.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
      AlarmGauges gauges = new AlarmGauges(test.plant(), () -> nanos[0]);
      test.clockAt(noon.plusSeconds(90));
      assertThat(gauges.oldestWaitingSeconds()).isEqualTo(90);
      test.plant().acknowledge(1, "Kim");
      nanos[0] = Duration.ofSeconds(4).toNanos();
      assertThat(gauges.oldestWaitingSeconds()).as("still what was read").isEqualTo(90);
      nanos[0] = Duration.ofSeconds(6).toNanos();
      assertThat(gauges.oldestWaitingSeconds()).isZero();
    }
  }

  @Test
  void aSampleFallsIntoTheBucketsOfItsTime() throws Exception {
    try (TestPlant test = new TestPlant(folder.resolve("other"), ServedPlant.NOW);
        EventStream events = new EventStream(test.plant().clock(), ServedPlant.ZONE);
        Meters meters = new Meters(test.plant(), events)) {
      Instant came = ServedPlant.NOW;
      meters.hear(new SamplesJudged(3, came, came.plusMillis(1_500)));
      meters.hear(new SamplesJudged(1, came, came.plusMillis(200)));
      Map<String, Double> found = parsed(meters.text("text/plain; version=0.0.4"));
      assertThat(found)
          .containsEntry("filmward_sample_latency_seconds_bucket{le=\"0.1\"}", 0.0)
          .containsEntry("filmward_sample_latency_seconds_bucket{le=\"0.25\"}", 1.0)
          .containsEntry("filmward_sample_latency_seconds_bucket{le=\"1.0\"}", 1.0)
          .containsEntry("filmward_sample_latency_seconds_bucket{le=\"2.0\"}", 4.0)
          .containsEntry("filmward_sample_latency_seconds_bucket{le=\"+Inf\"}", 4.0)
          .containsEntry("filmward_samples_stored_total", 4.0);
      assertThat(found.get("filmward_sample_latency_seconds_sum")).isEqualTo(3 * 1.5 + 0.2);
    }
  }

  @Test
  void openStreamsAndDeliveredEventsAreCounted() throws Exception {
    try (EventClient page = EventClient.connect(served.api())) {
      page.next("hello", Duration.ofSeconds(5));
      served.read("a.csv", ServedPlant.FILM.usual(0, 1));
      page.next("file", Duration.ofSeconds(5));
      Map<String, Double> found = metrics();
      assertThat(found).containsEntry("filmward_event_streams_open", 1.0);
      // hello, the sample, its file; the last is counted just after it is written
      assertThat(found.get("filmward_events_delivered_total")).isBetween(2.0, 3.0);
      assertThat(found).containsEntry("filmward_event_streams_dropped_total", 0.0);
    }
  }

  @Test
  void openMetricsIsGivenWhereItIsAskedForAndEndsAsItMust() {
    Api.Answer open =
        api.send(api.request("/metrics").header("Accept", "application/openmetrics-text;q=0.9"));
    assertThat(open.header("Content-Type")).startsWith("application/openmetrics-text");
    assertThat(open.text()).endsWith("# EOF\n").contains("# TYPE filmward_samples_stored counter");
    Api.Answer plain = api.get("/metrics");
    assertThat(plain.header("Content-Type")).startsWith("text/plain");
    assertThat(plain.text()).doesNotContain("# EOF");
    assertThat(served.routes())
        .filteredOn(known -> known.path().equals("/metrics"))
        .extracting(Routes.Known::permission)
        .containsExactly(Permission.READ);
  }

  @Test
  void healthIsUpWhileTheDatabaseAnswersAndSaysNothingMoreWhenItDoesNot() {
    Api.Answer up = api.get("/health");
    assertThat(up.status()).isEqualTo(200);
    assertThat(up.text()).isEqualTo("{\"status\":\"up\"}");
    served.loseTheDatabase();
    Api.Answer down = api.get("/health");
    assertThat(down.status()).isEqualTo(503);
    assertThat(down.text()).isEqualTo("{\"status\":\"down\",\"part\":\"database\"}");
  }

  /** Where reading is open; else nobody can be let in without the database. */
  @Test
  void theMetersOfADatabaseThatIsGoneAreNoNumbers() throws Exception {
    DoorOptions doors = DoorOptions.SHUT.with(Reading.OPEN);
    try (ServedPlant open = ServedPlant.in(folder.resolve("open"), served.plant().clock(), doors)) {
      open.loseTheDatabase();
      String text = open.nobody().get("/metrics").text();
      assertThat(metricsOf(text).get("filmward_alarms{state=\"shelved\"}")).isNaN();
    }
  }

  @Test
  void aDatabaseThatHangsIsDownAfterASecond() throws Exception {
    CountDownLatch never = new CountDownLatch(1);
    try (HealthResource health = new HealthResource(() -> await(never))) {
      long start = System.nanoTime();
      assertThat(health.databaseAnswers()).isFalse();
      assertThat(Duration.ofNanos(System.nanoTime() - start))
          .isBetween(Duration.ofMillis(900), Duration.ofSeconds(5));
    }
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void theAuditChainComesAsAFileOfEitherForm() {
    served.withFrozenLimits();
    JsonNode entries = api.get("/api/v1/audit").json().get("entries");
    assertThat(entries)
        .extracting(entry -> entry.get("action").asText())
        .containsExactly("structures", "account", "limits");
    assertThat(entries.get(1).get("before")).isEqualTo(entries.get(0).get("hash"));
    Api.Answer csv = api.get("/api/v1/audit?format=csv&from=2026-11-20&to=2026-11-21");
    assertThat(csv.header("Content-Type")).startsWith("text/csv");
    assertThat(csv.header("Content-Disposition")).contains("filmward-audit.csv");
    assertThat(csv.text()).contains(entries.get(1).get("hash").asText());
    assertThat(api.get("/api/v1/audit?from=2026-11-21").json().get("entries")).isEmpty();
  }

  private Map<String, Double> metrics() {
    return metricsOf(api.get("/metrics").text());
  }

  private static Map<String, Double> metricsOf(String text) {
    return parsed(text);
  }

  /** Every line is a comment or a value; anything else fails. */
  private static Map<String, Double> parsed(String text) {
    Map<String, Double> found = new TreeMap<>();
    for (String line : text.split("\n")) {
      if (!line.startsWith("#")) {
        Matcher value = LINE.matcher(line);
        assertThat(value.matches()).as(line).isTrue();
        String name = line.substring(0, line.lastIndexOf(' '));
        found.put(name, Double.valueOf(value.group(4).replace("+Inf", "Infinity")));
      }
    }
    return found;
  }
}
