package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Priority;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.store.TestDatabase;
import dev.filmward.telling.Address;
import dev.filmward.telling.Decided;
import dev.filmward.telling.Escalation;
import dev.filmward.telling.Happening;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.SecretChange;
import dev.filmward.telling.Settings;
import dev.filmward.web.SmallFilm;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A plant whose people are told of alarms, with a clock and a post that a test holds. */
final class ToldPlant implements AutoCloseable {
  /** 13:00 in the plant. */
  static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");

  final MovingClock clock = new MovingClock(NOON);
  final HeldPost post = new HeldPost();
  private final TestDatabase database;
  private final Path folder;
  private Plant plant;
  private Sender sender;

  ToldPlant(TestDatabase database, Path folder) throws Exception {
    this.database = database;
    this.folder = folder;
    open();
    plant.learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
  }

  private void open() {
    plant = new Plant(database.open(folder), clock, ZoneId.of("Europe/Berlin"));
    sender = new Sender(plant, post, new Passwords(Map.of()), Runnable::run);
  }

  Plant plant() {
    return plant;
  }

  void restart() {
    plant.close();
    open();
  }

  void send() {
    sender.round();
  }

  void escalate() {
    new Escalating(plant).tick(clock.instant());
  }

  /** A line whose limits are frozen. */
  void freeze(String line) {
    read(film(line).usual(0, 25));
    plant.freezeLimits(line, SmallFilm.CODE, 25, new Decision("Kim", "quiet", clock.instant()));
  }

  /** The skin of a line grows thinner, as its newest samples say. */
  Alarm thin(String line) {
    freeze(line);
    read(film(line).thinnerSkin(25, 27, 1));
    return alarmOf(line);
  }

  /** The samples of a line from 30 minutes ago until now, by the clock of the beginning. */
  static SmallFilm film(String line) {
    return new SmallFilm(line, NOON.minus(Duration.ofMinutes(30)), Duration.ofMinutes(1));
  }

  void read(String csv) {
    byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
    plant.read(new IncomingFile("a.csv", "watch", () -> new ByteArrayInputStream(bytes)));
  }

  Alarm alarmOf(String line) {
    return plant.store().read(tables -> tables.alarms().newest(100)).stream()
        .filter(alarm -> alarm.subject().line().equals(line))
        .findFirst()
        .orElseThrow();
  }

  /** Tells somebody of everything on all lines. */
  Rule tell(String name, QuietRules quiet) {
    return tell(name, new Rule.Scope(Set.of(), Priority.LOW, Set.of(Happening.OPENED)), quiet);
  }

  Rule tell(String name, Rule.Scope scope, QuietRules quiet) {
    Rule.Recipient to =
        new Rule.Recipient(name, Address.email(name + "@plant.example"), Optional.empty());
    return keep(new Rule(0, to, scope, quiet), RuleVersion.State.ON);
  }

  Rule keep(Rule rule, RuleVersion.State state) {
    return desk()
        .keep(new RuleVersion(rule, 0, state, decided()), SecretChange.KEEP)
        .version()
        .rule();
  }

  /** All priorities are escalated after half an hour, and again after an hour. */
  void escalateAfterHalfAnHour() {
    Map<Priority, Duration> after = new HashMap<>();
    for (Priority priority : Priority.values()) {
      after.put(priority, Duration.ofMinutes(30));
    }
    Escalation escalation = new Escalation(after, Optional.of(Duration.ofHours(1)));
    desk()
        .keep(
            new Settings(Optional.empty(), Optional.empty(), escalation),
            decided(),
            SecretChange.KEEP);
  }

  TellingDesk desk() {
    return new TellingDesk(plant, post, new Passwords(Map.of()));
  }

  Decided decided() {
    return new Decided("Ada", "as agreed", clock.instant());
  }

  List<OutboxEntry> outbox() {
    return desk().outbox(1000);
  }

  @Override
  public void close() {
    plant.close();
  }
}
