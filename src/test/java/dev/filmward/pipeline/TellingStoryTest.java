package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Priority;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.TestDatabase;
import dev.filmward.telling.Happening;
import dev.filmward.telling.Message;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.OutboxEntry.State;
import dev.filmward.telling.QuietHours;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.QuietRules.Night;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.Sent.Outcome;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** From a layer that thins to somebody who is told of it, or is left alone. */
@ParameterizedClass
@EnumSource(TestDatabase.class)
class TellingStoryTest {
  private static final String LINE = "Blown 1";
  private static final Set<Happening> ALL = Set.of(Happening.values());

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ToldPlant told;

  @BeforeEach
  void open() throws Exception {
    told = new ToldPlant(database, folder);
  }

  @AfterEach
  void close() {
    told.close();
  }

  @Test
  void aFreshAlarmIsToldOnceAndNotAgain() {
    told.tell("kim", QuietRules.NONE);
    told.thin(LINE);
    told.send();
    told.send();
    assertThat(told.post.subjects("kim"))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("Alarm: Skin: thinner than usual, Blown 1, ");
    assertThat(told.outbox().get(0).progress().state()).isEqualTo(State.SENT);
    assertThat(told.outbox().get(0).progress().sentTo()).isEqualTo("kim@plant.example");
  }

  @Test
  void anAlarmThatWasOldNewsWhenItCameIsNotTold() {
    told.tell("kim", new Rule.Scope(Set.of(), Priority.LOW, ALL), QuietRules.NONE);
    told.freeze(LINE);
    told.clock.forward(Duration.ofHours(3));
    told.read(ToldPlant.film(LINE).thinnerSkin(25, 27, 1));
    assertThat(told.alarmOf(LINE).historical()).isTrue();
    told.read(ToldPlant.film(LINE).usual(27, 46));
    told.clock.forward(Duration.ofHours(3));
    told.escalate();
    assertThat(told.outbox()).isEmpty();
  }

  @Test
  void onlyWhoWantsThatLineAndPriorityIsTold() {
    Set<Happening> opened = Set.of(Happening.OPENED);
    told.tell("here", new Rule.Scope(Set.of(LINE), Priority.LOW, opened), QuietRules.NONE);
    told.tell("there", new Rule.Scope(Set.of("Blown 2"), Priority.LOW, opened), QuietRules.NONE);
    told.tell(
        "later", new Rule.Scope(Set.of(), Priority.LOW, Set.of(Happening.CLOSED)), QuietRules.NONE);
    Rule off = told.tell("off", QuietRules.NONE);
    told.keep(off, RuleVersion.State.OFF);
    Alarm alarm = told.thin(LINE);
    assertThat(alarm.excursion().priority()).isNotEqualTo(Priority.HIGH);
    told.send();
    assertThat(told.post.tried).extracting(HeldPost.Tried::name).containsExactly("here");
  }

  @Test
  void returnAndClosureAreToldToWhoAsksForThem() {
    told.tell("kim", new Rule.Scope(Set.of(), Priority.LOW, ALL), QuietRules.NONE);
    Alarm alarm = told.thin(LINE);
    told.read(ToldPlant.film(LINE).usual(27, 29));
    told.plant().acknowledge(alarm.id(), "Jo");
    told.plant()
        .alarmDesk()
        .explain(alarm.id(), new Explanation("other", "hopper low", "filled it", "Jo"));
    told.send();
    assertThat(told.post.subjects("kim"))
        .extracting(subject -> subject.substring(0, subject.indexOf(':')))
        .containsExactly("Alarm", "As usual again", "Closed");
    assertThat(told.outbox().get(0).message().body()).contains("Cause: hopper low.");
  }

  @Test
  void whatIsRolledBackIsNotTold() {
    told.tell("kim", QuietRules.NONE);
    Alarm alarm = told.thin("Blown 2");
    told.send();
    Plant plant = told.plant();
    assertThatThrownBy(
            () ->
                plant
                    .store()
                    .change(
                        tables -> {
                          AlarmNews news =
                              new AlarmNews(
                                  tables,
                                  plant.structures(),
                                  plant.zone(),
                                  plant.clock().instant());
                          news.changed(Optional.empty(), alarm);
                          news.write();
                          assertThat(tables.outbox().newest(10)).hasSize(2);
                          throw new IllegalStateException("the disk is full");
                        }))
        .hasMessageContaining("disk");
    assertThat(told.outbox()).hasSize(1);
  }

  @Test
  void aServerThatIsDownIsTriedWithGrowingGapsUnderTheSameKeyAcrossARestart() {
    told.tell("kim", QuietRules.NONE);
    told.post.answer("kim", Outcome.NO_WAY);
    told.thin(LINE);
    told.send();
    told.send();
    assertThat(told.post.tried).as("no second attempt at once").hasSize(1);
    told.clock.forward(Duration.ofSeconds(10));
    told.send();
    told.restart();
    told.clock.forward(Duration.ofSeconds(29));
    told.send();
    assertThat(told.post.tried).hasSize(2);
    told.post.answer("kim", Outcome.TAKEN);
    told.clock.forward(Duration.ofSeconds(1));
    told.send();
    told.clock.forward(Duration.ofDays(1));
    told.send();
    assertThat(told.post.tried).hasSize(3);
    assertThat(told.post.tried.stream().map(each -> each.message().key()).distinct()).hasSize(1);
    assertThat(told.outbox().get(0).progress().attempts()).isEqualTo(3);
  }

  @Test
  void afterThreeDaysItIsGivenUpAndSaysWhy() {
    told.tell("kim", QuietRules.NONE);
    told.post.answer("kim", Outcome.NO_WAY);
    told.thin(LINE);
    for (int i = 0; i < 80; i++) {
      told.send();
      told.clock.forward(Duration.ofHours(1));
    }
    OutboxEntry entry = told.outbox().get(0);
    assertThat(entry.progress().state()).isEqualTo(State.GIVEN_UP);
    assertThat(entry.progress().lastError()).isEqualTo("said NO_WAY");
    int attempts = told.post.tried.size();
    told.clock.forward(Duration.ofDays(1));
    told.send();
    assertThat(told.post.tried).hasSize(attempts);
  }

  @Test
  void aMessageTakenBeforeTheProcessEndedIsSentAgainUnderItsKey() {
    told.tell("kim", QuietRules.NONE);
    told.thin(LINE);
    told.post.crashFor("kim");
    assertThatThrownBy(told::send).hasMessageContaining("ends here");
    told.post.crashFor("");
    told.restart();
    told.send();
    told.send();
    List<String> keys =
        told.post.tried.stream().map(HeldPost.Tried::message).map(Message::key).toList();
    assertThat(keys).hasSize(2).allMatch(keys.get(0)::equals);
  }

  @Test
  void aMessageThatWasTakenIsNotSentAgainBecauseItCouldNotBeNoted() throws Exception {
    told.tell("kim", QuietRules.NONE);
    told.thin(LINE);
    try (Connection plain = database.plainSql(folder);
        Statement sql = plain.createStatement()) {
      for (String step : noUpdates()) {
        sql.execute(step);
      }
      told.send();
      told.send();
      sql.execute("DROP TRIGGER no_room" + (isSqlite() ? "" : " ON outbox"));
    }
    told.send();
    assertThat(told.post.tried).hasSize(1);
    assertThat(told.outbox().get(0).progress().state()).isEqualTo(State.SENT);
  }

  @Test
  void oneRecipientWhoCannotBeReachedHoldsUpNobodyElse() {
    told.tell("broken", QuietRules.NONE);
    told.tell("kim", QuietRules.NONE);
    told.post.answer("broken", Outcome.NO_WAY);
    told.thin(LINE);
    told.thin("Blown 2");
    told.thin("Blown 3");
    told.send();
    assertThat(told.post.subjects("kim")).hasSize(3);
    assertThat(told.post.subjects("broken")).as("the others wait as well").hasSize(1);
  }

  @Test
  void aMessageThatIsRefusedHoldsUpNoOtherOne() {
    told.tell("kim", QuietRules.NONE);
    told.post.answer("kim", Outcome.REFUSED);
    told.thin(LINE);
    told.thin("Blown 2");
    told.send();
    assertThat(told.post.subjects("kim")).hasSize(2);
  }

  @Test
  void whatWaitsForARuleThatIsRemovedIsGivenUp() {
    Rule rule = told.tell("kim", QuietRules.NONE);
    told.thin(LINE);
    told.keep(rule, RuleVersion.State.REMOVED);
    told.send();
    assertThat(told.post.tried).isEmpty();
    assertThat(told.outbox().get(0).progress().lastError()).contains("removed");
  }

  @Test
  void quietHoursEndWithOneSummary() {
    QuietHours untilTwo = new QuietHours(LocalTime.of(12, 0), LocalTime.of(14, 0));
    told.tell(
        "kim", new QuietRules(Optional.of(untilTwo), Night.HIGH_GOES_THROUGH, 0, Duration.ZERO));
    told.thin(LINE);
    told.thin("Blown 2");
    told.clock.forward(Duration.ofMinutes(59));
    told.send();
    assertThat(told.post.tried).isEmpty();
    told.clock.forward(Duration.ofMinutes(1));
    told.send();
    told.send();
    assertThat(told.post.subjects("kim"))
        .containsExactly("2 messages about alarms that were held back");
    assertThat(told.outbox())
        .extracting(entry -> entry.progress().state())
        .containsExactlyInAnyOrder(State.SENT, State.SUMMED_UP, State.SUMMED_UP);
  }

  @Test
  void oneMessageThatWasHeldBackGoesAsItIs() {
    QuietHours untilTwo = new QuietHours(LocalTime.of(12, 0), LocalTime.of(14, 0));
    told.tell(
        "kim", new QuietRules(Optional.of(untilTwo), Night.EVERYTHING_WAITS, 0, Duration.ZERO));
    told.thin(LINE);
    told.clock.forward(Duration.ofHours(1));
    told.send();
    assertThat(told.post.subjects("kim")).hasSize(1).first().asString().startsWith("Alarm: ");
  }

  @Test
  void moreThanSoManyAnHourBecomeOneSummaryWhenTheHourHasPassed() {
    told.tell("kim", new QuietRules(Optional.empty(), Night.HIGH_GOES_THROUGH, 2, Duration.ZERO));
    for (int line = 1; line <= 5; line++) {
      told.thin("Blown " + line);
      told.send();
    }
    assertThat(told.post.subjects("kim")).hasSize(2);
    told.clock.forward(Duration.ofMinutes(60));
    told.send();
    assertThat(told.post.subjects("kim"))
        .hasSize(3)
        .last()
        .isEqualTo("3 messages about alarms that were held back");
  }

  @Test
  void theSameAlarmIsNotToldAgainWithinItsTime() {
    QuietRules calm =
        new QuietRules(Optional.empty(), Night.HIGH_GOES_THROUGH, 0, Duration.ofMinutes(30));
    told.tell("kim", QuietRules.NONE);
    told.tell("calm", calm);
    told.thin(LINE);
    told.read(ToldPlant.film(LINE).usual(27, 28));
    told.read(ToldPlant.film(LINE).thinnerSkin(28, 30, 1));
    told.send();
    assertThat(told.post.subjects("kim")).as("it signals again").hasSize(2);
    assertThat(told.post.subjects("calm")).hasSize(1);
  }

  @Test
  void anAlarmThatNobodyTakesIsEscalatedOnceAndAgainAfterItsTime() {
    told.escalateAfterHalfAnHour();
    told.tell(
        "lead",
        new Rule.Scope(Set.of(), Priority.LOW, Set.of(Happening.ESCALATED)),
        QuietRules.NONE);
    Alarm alarm = told.thin(LINE);
    told.clock.forward(Duration.ofMinutes(29));
    told.escalate();
    assertThat(told.outbox()).isEmpty();
    told.clock.forward(Duration.ofMinutes(1));
    told.escalate();
    told.restart();
    told.escalate();
    assertThat(told.outbox()).hasSize(1);
    assertThat(history(alarm)).endsWith("not taken after 30 minutes: told lead");
    told.clock.forward(Duration.ofMinutes(60));
    told.escalate();
    assertThat(told.outbox()).hasSize(2);
    told.plant().acknowledge(alarm.id(), "Jo");
    told.clock.forward(Duration.ofHours(5));
    told.escalate();
    assertThat(told.outbox()).hasSize(2);
  }

  @Test
  void theTimeToEscalationIsCountedOnTheServersClock() {
    told.escalateAfterHalfAnHour();
    told.tell(
        "lead",
        new Rule.Scope(Set.of(), Priority.LOW, Set.of(Happening.ESCALATED)),
        QuietRules.NONE);
    told.freeze(LINE);
    told.clock.forward(Duration.ofMinutes(90));
    told.read(ToldPlant.film(LINE).thinnerSkin(25, 27, 1));
    assertThat(told.alarmOf(LINE).historical()).isFalse();
    told.escalate();
    assertThat(told.outbox()).as("its samples are 90 minutes old, it is not").isEmpty();
    told.clock.forward(Duration.ofMinutes(30));
    told.escalate();
    assertThat(told.outbox()).hasSize(1);
  }

  @Test
  void whoIsLeftAloneIsNamedWithTheTimeInTheHistory() {
    told.escalateAfterHalfAnHour();
    QuietHours untilTwo = new QuietHours(LocalTime.of(12, 0), LocalTime.of(14, 0));
    told.tell(
        "lead",
        new Rule.Scope(Set.of(), Priority.LOW, Set.of(Happening.ESCALATED)),
        new QuietRules(Optional.of(untilTwo), Night.EVERYTHING_WAITS, 0, Duration.ZERO));
    Alarm alarm = told.thin(LINE);
    told.clock.forward(Duration.ofMinutes(30));
    told.escalate();
    assertThat(history(alarm))
        .endsWith("not taken after 30 minutes: told lead (at 14:00, left alone now)");
  }

  @Test
  void anAlarmThatIsWithdrawnIsNotToldAnyMore() {
    told.tell("kim", QuietRules.NONE);
    told.thin(LINE);
    told.read(ToldPlant.film(LINE).usual(25, 27));
    told.send();
    assertThat(told.post.tried).isEmpty();
    assertThat(told.outbox().get(0).progress().state()).isEqualTo(State.WITHDRAWN);
  }

  /** Has the database refuse to note anything about a message. */
  private List<String> noUpdates() {
    return isSqlite()
        ? List.of(
            "CREATE TRIGGER no_room BEFORE UPDATE ON outbox"
                + " BEGIN SELECT RAISE(ABORT, 'no room'); END")
        : List.of(
            "CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS"
                + " $$ BEGIN RAISE EXCEPTION 'no room'; END $$",
            "CREATE TRIGGER no_room BEFORE UPDATE ON outbox"
                + " FOR EACH ROW EXECUTE FUNCTION no_room()");
  }

  private boolean isSqlite() {
    return database == TestDatabase.SQLITE;
  }

  private String history(Alarm alarm) {
    List<HistoryEntry> entries =
        told.plant().store().read(tables -> tables.alarms().history(alarm.id()));
    return entries.get(entries.size() - 1).what();
  }
}
