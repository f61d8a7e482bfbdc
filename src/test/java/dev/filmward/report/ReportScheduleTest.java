package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.ReportSettings.Schedule;
import dev.filmward.store.StoredReport;
import dev.filmward.telling.Message;
import dev.filmward.telling.Post;
import dev.filmward.telling.Sent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Reports are made when they are due, once, also after downtime, and sent until somebody takes
 * them.
 */
class ReportScheduleTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final Instant FRIDAY = Instant.parse("2026-11-20T09:00:00Z");
  private static final Schedule MONDAY_AT_SIX =
      new Schedule(true, 1, 6, List.of("quality@plant.example"), "en", "a4");

  @TempDir private Path folder;
  private TestPlant plant;
  private ReportDesk desk;
  private final List<Message> sent = new ArrayList<>();
  private boolean isServerDown;
  private ReportSchedule schedule;

  @BeforeEach
  void open() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    plant = new TestPlant(folder, FRIDAY);
    plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
    plant.read("readings.csv", Files.readString(run.resolve("readings.csv")));
    desk = new ReportDesk(plant.plant(), new WeekReader(plant.plant(), "test"));
    Post post =
        (message, to, mail, secret) -> {
          if (!isServerDown) {
            sent.add(message);
          }
          return new Sent(
              isServerDown ? Sent.Outcome.NO_WAY : Sent.Outcome.TAKEN,
              isServerDown ? "nothing answers" : "taken");
        };
    schedule = new ReportSchedule(plant.plant(), desk, post, new Passwords(Map.of()));
    desk.decide(new ReportSettings(Asked.USUAL, List.of(), MONDAY_AT_SIX), "Quinn", "every Monday");
  }

  @AfterEach
  void close() {
    schedule.close();
    plant.close();
  }

  @Test
  void theWeekThatEndedIsMadeAtItsHourAndOnce() throws Exception {
    at("2026-11-23T04:59:00Z");
    schedule.run();
    assertThat(desk.newest(10)).isEmpty();

    at("2026-11-23T05:00:00Z"); // 06:00 in the plant
    schedule.run();
    schedule.run();
    assertThat(desk.newest(10))
        .extracting(StoredReport::scope)
        .extracting("week")
        .containsExactly("2026-W47");
    assertThat(desk.newest(10).get(0).signature()).isEmpty();
    assertThat(sent).hasSize(1);
    assertThat(sent.get(0).subject()).contains("2026-W47");
    assertThat(sent.get(0).body()).contains("nobody has signed it yet");
    byte[] pdf = sent.get(0).attachment().orElseThrow().bytes();
    try (var document = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(document)).contains("2026-W47", "SHR-60");
    }
  }

  @Test
  void weeksThatWereMissedAreMadeUpFor() {
    at("2026-12-14T08:00:00Z");
    schedule.run();
    assertThat(desk.newest(10))
        .extracting(StoredReport::scope)
        .extracting("week")
        .containsExactly("2026-W50", "2026-W49", "2026-W48", "2026-W47");
    assertThat(sent).hasSize(4);
  }

  @Test
  void aMailThatNobodyTakesIsTriedAgainAfterAWhile() {
    isServerDown = true;
    at("2026-11-23T05:00:00Z");
    schedule.run();
    schedule.run();
    isServerDown = false;
    schedule.run();
    assertThat(sent).as("not before a minute is over").isEmpty();
    plant.clockAt(Instant.parse("2026-11-23T05:01:00Z").plus(Duration.ofSeconds(1)));
    schedule.run();
    assertThat(sent).hasSize(1);
  }

  @Test
  void aMailOnItsWayIsStillSentWhenSomethingElseIsDecided() {
    isServerDown = true;
    at("2026-11-23T05:00:00Z");
    schedule.run();
    at("2026-11-23T07:00:00Z");
    desk.decide(
        new ReportSettings(new Asked(1.5, 0.9), List.of(), MONDAY_AT_SIX), "Quinn", "asked for");
    isServerDown = false;
    at("2026-11-23T07:05:00Z");
    schedule.run();
    schedule.run();
    assertThat(sent).extracting(Message::subject).singleElement().asString().contains("2026-W47");
  }

  @Test
  void nothingIsMadeWhileTheScheduleIsOff() {
    desk.decide(ReportSettings.USUAL, "Quinn", "by hand from now on");
    at("2026-11-30T08:00:00Z");
    schedule.run();
    assertThat(desk.newest(10)).isEmpty();
  }

  /** On 25 October 2026 the hour from 2 to 3 comes twice, on 29 March it does not come at all. */
  @Test
  void anHourThatAClockChangeSkipsIsTheOneAfterIt() {
    Schedule sundayAtTwo = new Schedule(true, 7, 2, List.of(), "en", "a4");
    Instant decided = Instant.parse("2026-03-23T00:00:00Z");
    assertThat(schedule.due(sundayAtTwo, decided, Instant.parse("2026-03-29T00:59:00Z"))).isEmpty();
    assertThat(schedule.due(sundayAtTwo, decided, Instant.parse("2026-03-29T01:00:00Z")))
        .containsExactly(ReportWeek.parse("2026-W12", ZONE));
  }

  private void at(String moment) {
    plant.clockAt(Instant.parse(moment));
  }
}
