package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.EventClient.Event;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages hear at once of what happened, and of all of it. */
@Tag("alone")
class EventStreamTest {
  private static final Duration SOON = Duration.ofSeconds(1);
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private static final Pattern METER =
      Pattern.compile("(?m)^filmward_event_streams_dropped_total (\\S+)$");

  @TempDir private Path folder;
  private ServedPlant served;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void saysHelloAtOnceWithTheTime() throws Exception {
    try (EventClient page = EventClient.connect(served.api())) {
      Event hello = page.next(SOON);
      assertThat(hello.name()).isEqualTo("hello");
      assertThat(hello.id()).isNotBlank();
      assertThat(hello.data()).isEqualTo("{\"now\":\"2026-11-20T13:00:00+01:00\"}");
    }
  }

  @Test
  void tellsOfASampleAnAlarmAndItsFileWithinASecondOfStoringThem() throws Exception {
    try (EventClient page = EventClient.connect(served.api())) {
      page.next("hello", SOON);
      served.api().upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
      Event sample = page.next("sample", SOON);
      assertThat(sample.data())
          .contains("\"line\":\"Blown 1\"", "\"sample\":\"S00025\"", "\"roll\":\"R1\"");
      Event alarm = page.next("alarm", SOON);
      assertThat(alarm.data()).contains("\"line\":\"Blown 1\"", "\"state\":\"unacknowledged\"");
      assertThat(page.next("file", SOON).data()).contains("\"name\":\"thin.csv\"");
      served.api().post("/api/v1/alarms/1/acknowledge", "{}");
      assertThat(page.next("alarm", SOON).data()).contains("\"state\":\"acknowledged\"");
      served.api().freeze();
      assertThat(page.next("limits", SOON).data()).contains("\"structure\":\"DUO-50\"");
    }
  }

  @Test
  void aPageThatComesBackMissesNothingAndHearsNothingTwice() throws Exception {
    String lastId;
    try (EventClient page = EventClient.connect(served.api())) {
      page.next("hello", PATIENCE);
      served.api().upload("0.csv", ServedPlant.FILM.usual(25, 26));
      lastId = page.next("file", PATIENCE).id();
    }
    for (int number = 26; number < 30; number++) {
      served.api().upload(number + ".csv", ServedPlant.FILM.usual(number, number + 1));
    }
    try (EventClient page = EventClient.connect(served.api(), lastId)) {
      List<Event> caughtUp = page.upTo(event -> event.data().contains("29.csv"), PATIENCE);
      assertThat(caughtUp)
          .extracting(Event::name)
          .containsExactly(
              "hello", "sample", "file", "sample", "file", "sample", "file", "sample", "file");
      // a page that is cut off again before it has caught up must come back to where it was
      assertThat(caughtUp.get(0).id()).isEqualTo(lastId);
      assertThat(caughtUp).extracting(Event::id).doesNotHaveDuplicates();
      served.api().upload("30.csv", ServedPlant.FILM.usual(30, 31));
      assertThat(page.next(PATIENCE).data()).contains("S00030");
    }
  }

  @Test
  void aPageThatComesBackFromAnotherLifeIsToldToReload() throws Exception {
    for (String id : List.of("another-7", "7", "x", "-", "\u00e9-1")) {
      try (EventClient page = EventClient.connect(served.api(), id)) {
        assertThat(page.next(SOON).name()).as(id).isEqualTo("hello");
        assertThat(page.next(SOON).name()).as(id).isEqualTo("reload");
      }
    }
  }

  @Test
  void aPageThatWasAwayForMoreThanIsKeptIsToldToReload() throws Exception {
    String lastId;
    try (EventClient page = EventClient.connect(served.api())) {
      lastId = page.next("hello", SOON).id();
    }
    for (int file = 0; file <= EventStream.KEPT; file++) {
      served.read("nothing.csv", SmallFilm.HEADER);
    }
    try (EventClient page = EventClient.connect(served.api(), lastId)) {
      assertThat(page.next(SOON).name()).isEqualTo("hello");
      assertThat(page.next(SOON).name()).isEqualTo("reload");
    }
  }

  @Test
  void aFileOfManySamplesIsToldOfByItsNewestSampleOnly() throws Exception {
    try (EventClient page = EventClient.connect(served.api())) {
      page.next("hello", PATIENCE);
      served.api().upload("many.csv", ServedPlant.FILM.usual(31, 31 + 2 * EventStream.KEPT));
      List<Event> events = page.upTo(event -> event.data().contains("many.csv"), PATIENCE);
      assertThat(events).extracting(Event::name).containsExactly("sample", "file");
      assertThat(events.get(0).data()).contains(SmallFilm.sample(30 + 2 * EventStream.KEPT));
    }
  }

  /** A request may take 30 s by default, on the server's side as on the network's; this may not. */
  @Test
  void aStreamStaysOpenAndIsKeptAliveWhileNothingHappens() throws Exception {
    try (EventClient page = EventClient.connect(served.api())) {
      page.next("hello", SOON);
      long end = System.nanoTime() + Duration.ofSeconds(36).toNanos();
      assertThat(page.next(Duration.ofSeconds(17)).name()).isEqualTo(EventClient.COMMENT);
      assertThat(page.next(Duration.ofSeconds(17)).name()).isEqualTo(EventClient.COMMENT);
      Thread.sleep(Duration.ofNanos(Math.max(0, end - System.nanoTime())).toMillis());
      served.api().upload("later.csv", ServedPlant.FILM.usual(25, 26));
      assertThat(page.next(SOON).name()).isEqualTo("sample");
    }
  }

  @Test
  void aServerThatStopsEndsItsStreamsAndIsQuick() throws Exception {
    List<EventClient> pages = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      pages.add(EventClient.connect(served.api()));
      pages.get(i).next("hello", PATIENCE);
    }
    long start = System.nanoTime();
    served.stopServing();
    for (EventClient page : pages) {
      page.next(EventClient.END, SOON);
      page.close();
    }
    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
  }

  @Test
  void aPageThatNeverReadsHoldsUpNobody() throws Exception {
    try (Socket deaf = neverReading();
        EventClient page = EventClient.connect(served.api())) {
      page.next("hello", SOON);
      fillTheBuffersOfAConnection();
      served.api().upload("many.csv", ServedPlant.FILM.usual(31, 31 + 2 * EventStream.KEPT));
      page.upTo(event -> event.data().contains("many.csv"), SOON);
      served.api().upload("next.csv", ServedPlant.FILM.usual(25, 26));
      assertThat(page.next("sample", SOON).data()).contains("S00025");
      assertThat(deaf.isConnected()).isTrue();
      long start = System.nanoTime();
      served.stopServing();
      assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(5));
    }
  }

  /** So much waits for it that less is kept; it looks at everything anew. */
  @Test
  void aPageThatIsTooSlowIsDroppedOnceAndToldToReloadWhenItComesBack() throws Exception {
    String lastId;
    try (Socket deaf = neverReading()) {
      try (EventClient page = EventClient.connect(served.api())) {
        lastId = page.next("hello", PATIENCE).id();
      }
      fillTheBuffersOfAConnection();
      for (int file = 0; file < 3 * EventStream.KEPT && dropped() < 1; file++) {
        served.read("nothing.csv", SmallFilm.HEADER);
      }
      assertThat(dropped()).isEqualTo(1);
      for (int file = 0; file < 2 * EventStream.KEPT; file++) {
        served.read("nothing.csv", SmallFilm.HEADER);
      }
      assertThat(dropped()).isEqualTo(1);
      assertThat(deaf.isConnected()).isTrue();
    }
    try (EventClient page = EventClient.connect(served.api(), lastId)) {
      assertThat(page.next(PATIENCE).name()).isEqualTo("hello");
      Event reload = page.next(PATIENCE);
      assertThat(reload.name()).isEqualTo("reload");
      assertThat(reload.id()).isNotEqualTo(lastId);
      served.api().upload("next.csv", ServedPlant.FILM.usual(25, 26));
      assertThat(page.next(PATIENCE).data()).contains("S00025");
    }
  }

  private double dropped() {
    return METER
        .matcher(served.api().get("/metrics").text())
        .results()
        .mapToDouble(found -> Double.parseDouble(found.group(1)))
        .sum();
  }

  private Socket neverReading() throws IOException {
    Socket socket = new Socket();
    socket.setReceiveBufferSize(4_096);
    socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), served.port()));
    String request =
        "GET /api/v1/events HTTP/1.1\r\nHost: localhost\r\nAccept: text/event-stream\r\nCookie: "
            + served.api().cookie()
            + "\r\n\r\n";
    socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
    byte[] status = socket.getInputStream().readNBytes("HTTP/1.1 200".length());
    assertThat(new String(status, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 200");
    return socket;
  }

  /** 12 MB of events; the system keeps less than 5 MB for a connection that is not read. */
  private void fillTheBuffersOfAConnection() {
    for (int i = 0; i < 200; i++) {
      served.read("x".repeat(60_000), SmallFilm.HEADER);
    }
  }
}
