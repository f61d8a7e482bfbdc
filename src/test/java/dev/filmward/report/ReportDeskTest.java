package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.pipeline.LongWork;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.store.StoredReport;
import dev.filmward.store.StoredReport.Signature;
import dev.filmward.store.TestDatabase;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What was issued stays as it was; a correction of data makes a revision that says what changed.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class ReportDeskTest {
  private static final Instant MONDAY = Instant.parse("2026-11-23T06:00:00Z");
  private static final ReportWeek WEEK = ReportWeek.parse("2026-W47", ZoneId.of("Europe/Berlin"));
  private static final Path RUN = Path.of("sample-runs/shrink-in-control");

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant plant;
  private ReportDesk desk;

  @BeforeEach
  void open() throws Exception {
    plant = new TestPlant(database, folder, MONDAY);
    plant.plant().learnStructures("s.yaml", Files.readAllBytes(RUN.resolve("structures.yaml")));
    plant.read("readings.csv", Files.readString(RUN.resolve("readings.csv")));
    plant.freeze("Blown 2", "SHR-60");
    desk = new ReportDesk(plant.plant(), new WeekReader(plant.plant(), "test"));
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void aPreviewTellsHowFarItIsAndEndsWhereNobodyWaitsForIt() throws Exception {
    LongWork wanted = new LongWork();
    wanted.during(() -> desk.preview(WEEK, Scope.ALL));
    assertThat(wanted.share()).hasValue(1);
    LongWork unwanted = new LongWork();
    unwanted.cancel();
    assertThatThrownBy(() -> unwanted.during(() -> desk.preview(WEEK, Scope.ALL)))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void anIssuedReportIsFrozenAndACorrectionMakesARevision() throws Exception {
    StoredReport first = desk.issue(WEEK, Scope.ALL, seen(), signed("as seen"));
    assertThat(first.revision()).isEqualTo(1);
    byte[] frozen = ReportJson.write(desk.find(first.id()).report());

    assertThatThrownBy(() -> desk.issue(WEEK, Scope.ALL, seen(), signed("again")))
        .hasMessageContaining("nothing differs from revision 1");

    correctOneReading();
    assertThat(ReportJson.write(desk.find(first.id()).report())).isEqualTo(frozen);

    StoredReport second = desk.issue(WEEK, Scope.ALL, seen(), signed("a reading was mistyped"));
    assertThat(second.revision()).isEqualTo(2);
    assertThat(second.dataDigest()).isNotEqualTo(first.dataDigest());
    Issue issue = desk.find(second.id());
    assertThat(issue.standing().signedBy()).isEqualTo("Quinn");
    List<ReportChange> changes = issue.standing().changes();
    assertThat(changes.get(0).figure()).isEqualTo("data");
    assertThat(changes).hasSizeGreaterThan(1);
    assertThat(changes.subList(1, changes.size()))
        .allMatch(change -> change.line().equals("Blown 2"));
    assertThat(changes)
        .anyMatch(
            change ->
                change.figure().equals("mean") && change.characteristic().endsWith("Outer skin"));
    assertThat(changes)
        .noneMatch(
            change -> change.figure().equals("mean") && change.characteristic().endsWith("1 Core"));
  }

  /** Mean and spread of all readings stay what they were; only the lanes' figures differ. */
  @Test
  void lanesThatWereMixedUpMakeARevisionThatNamesThem() throws Exception {
    desk.issue(WEEK, Scope.ALL, seen(), signed("as seen"));
    swapTwoLanes();
    StoredReport second = desk.issue(WEEK, Scope.ALL, seen(), signed("two lanes were mixed up"));
    assertThat(second.revision()).isEqualTo(2);
    assertThat(desk.find(second.id()).standing().changes())
        .extracting(ReportChange::figure)
        .contains("lane 1", "lane 5")
        .doesNotContain("lane 2", "readings");
  }

  /** Nobody signs figures that changed after they were looked at. */
  @Test
  void whatWasNotSeenCannotBeSigned() throws Exception {
    String seen = seen();
    correctOneReading();
    assertThatThrownBy(() -> desk.issue(WEEK, Scope.ALL, seen, signed("as seen")))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("look at it again");
    assertThat(desk.newest(10)).isEmpty();
    assertThat(desk.issue(WEEK, Scope.ALL, seen(), signed("as seen")).revision()).isEqualTo(1);
  }

  private String seen() {
    return ReportJson.seen(desk.preview(WEEK, Scope.ALL));
  }

  private void swapTwoLanes() throws Exception {
    List<String> lines = Files.readAllLines(RUN.resolve("readings.csv"));
    String first = reading(lines, ",S100,1,Outer skin,");
    String last = reading(lines, ",S100,5,Outer skin,");
    plant.read(
        "mended.csv",
        String.join(
            "\n",
            lines.get(0),
            upToValue(first) + last.substring(last.lastIndexOf(',')),
            upToValue(last) + first.substring(first.lastIndexOf(',')),
            ""));
  }

  private static String reading(List<String> lines, String part) {
    return lines.stream().filter(each -> each.contains(part)).findFirst().orElseThrow();
  }

  private static String upToValue(String line) {
    return line.substring(0, line.lastIndexOf(','));
  }

  private void correctOneReading() throws Exception {
    List<String> lines = Files.readAllLines(RUN.resolve("readings.csv"));
    String header = lines.get(0);
    String line =
        lines.stream()
            .filter(each -> each.contains(",S100,1,Outer skin,"))
            .findFirst()
            .orElseThrow();
    plant.read("mended.csv", header + "\n" + line.substring(0, line.lastIndexOf(',')) + ",18.61\n");
  }

  @Test
  void aWeekThatHasNotEndedCannotBeIssuedButSeen() {
    Signature early = new Signature("Quinn", Instant.parse("2026-11-20T12:00:00Z"), "early");
    assertThatThrownBy(() -> desk.issue(WEEK, Scope.ALL, seen(), early))
        .hasMessageContaining("2026-W47 ends at");
    assertThat(desk.preview(WEEK, Scope.ALL).films()).hasSize(1);
    assertThat(desk.newest(10)).isEmpty();
  }

  @Test
  void aDraftTakesThePlaceOfTheDraftBefore() {
    desk.draft(WEEK, Scope.ALL);
    StoredReport draft = desk.draft(WEEK, Scope.ALL);
    assertThat(desk.newest(10)).containsExactly(draft);
    assertThat(desk.find(draft.id()).standing().revision()).isZero();
  }

  @Test
  void settingsAreDecidedWithAReasonAndStandInTheChain() {
    ReportSettings settings =
        new ReportSettings(new Asked(1.5, 0.9), List.of(), ReportSettings.Schedule.OFF);
    desk.decide(settings, "Quinn", "the customer asks for it");
    assertThat(desk.settings().settings()).isEqualTo(settings);
    assertThat(desk.settings().version()).isEqualTo(1);
    assertThat(desk.preview(WEEK, Scope.ALL).asked().index()).isEqualTo(1.5);
    assertThatThrownBy(() -> desk.decide(settings, "Quinn", " ")).hasMessageContaining("reason");
    List<String> chain =
        plant.plant().store().read(tables -> tables.audit().newest(5)).stream()
            .map(Object::toString)
            .toList();
    assertThat(chain).anyMatch(entry -> entry.contains("the customer asks for it"));
  }

  private static Signature signed(String reason) {
    return new Signature("Quinn", MONDAY, reason);
  }
}
