package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.alarm.AlarmSpan;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftCalendar;
import dev.filmward.shift.ShiftPattern;
import dev.filmward.store.ShiftNote;
import dev.filmward.store.ShiftNote.Kind;
import dev.filmward.store.ShiftNoteTable.Search;
import dev.filmward.store.SignedHandover;
import dev.filmward.store.SignedHandover.Side;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
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

/** What shifts leave behind is kept on either database. It is 13:00 in the plant. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class HandoverDeskTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant test;
  private HandoverDesk desk;

  @BeforeEach
  void open() {
    test = new TestPlant(database, folder, NOW);
    desk = new HandoverDesk(test.plant());
  }

  @AfterEach
  void close() {
    test.close();
  }

  @Test
  void aCalendarComesBackAsItWasSet() {
    ShiftPattern weekly =
        new ShiftPattern(
            "Früh",
            LocalTime.of(5, 45),
            Set.of(DayOfWeek.MONDAY, DayOfWeek.SUNDAY),
            List.of("Crew A", "B"));
    ShiftCalendar calendar =
        new ShiftCalendar(List.of(weekly, ShiftPattern.daily("Spät", "13:45")), 4);
    new ShiftDesk(test.plant()).set(calendar, LocalDate.parse("2026-11-23"), "Kim", "new crews");
    test.restart();
    assertThat(new ShiftDesk(test.plant()).book().versions())
        .singleElement()
        .satisfies(
            version -> {
              assertThat(version.calendar()).isEqualTo(calendar);
              assertThat(version.holdsFrom()).isEqualTo("2026-11-23");
              assertThat(version.author()).isEqualTo("Kim");
            });
  }

  @Test
  void notesAreFoundWhateverTheirLettersAndSignsThatSearchesUse() {
    desk.write(note("Düse an BAHN 3 läuft 100 % heiß", Kind.NOTE));
    desk.write(note("100 meters of film_7 lost", Kind.NOTE));
    assertThat(found("DÜSE bahn")).isEqualTo(1);
    assertThat(found("100")).isEqualTo(2);
    assertThat(found("100 %")).isEqualTo(1);
    assertThat(found("film_7")).isEqualTo(1);
    assertThat(found("film!7")).isZero();
  }

  @Test
  void aThingToDoIsCarriedOverFromOneShiftToTheNextUntilItIsSettled() {
    ShiftNote kept = desk.write(note("grease the nip", Kind.FOLLOW_UP));
    desk.write(note("quiet night", Kind.NOTE));
    assertThat(carriedOver("2026-11-20T13:00:00Z")).containsExactly("grease the nip");
    assertThat(carriedOver("2026-11-20T11:00:00Z")).isEmpty();
    desk.settle(kept.id(), new ShiftNote.Settled(NOW.plusSeconds(7200), "Lee", "done"));
    // settled at 14:00 UTC: the shift that began at 13:00 still shows it, the next one does not
    assertThat(carriedOver("2026-11-20T13:00:00Z")).containsExactly("grease the nip");
    assertThat(carriedOver("2026-11-20T15:00:00Z")).isEmpty();
  }

  @Test
  void whatWasSignedIsKeptToTheLetterAndNeverChanged() throws SQLException {
    Shift early = new ShiftDesk(test.plant()).book().at(NOW);
    String content = "{\"line\": \"Bläser 1\"}";
    desk.handOver("", early, content, "Kim");
    // printf '{"line": "Bläser 1"}' | sha256sum
    String digest = "48ace8b57da1d3205f727056fdbffa9466fcad03b98bf3e5b64467f9f1cd0d91";
    assertThatThrownBy(() -> desk.takeOver(HandoverDesk.key("", early), digest, " kim "))
        .hasMessageContaining("another person");
    desk.takeOver(HandoverDesk.key("", early), digest, "Lee");
    test.restart();
    SignedHandover kept =
        new HandoverDesk(test.plant()).signed(HandoverDesk.key("", early)).orElseThrow();
    assertThat(kept.content()).isEqualTo(content);
    assertThat(kept.signature(Side.OUTGOING).orElseThrow().by()).isEqualTo("Kim");
    assertThat(kept.signature(Side.INCOMING).orElseThrow().at()).isEqualTo(NOW);
    for (String change :
        List.of(
            "UPDATE handover SET content = 'x'",
            "DELETE FROM handover_signature",
            "UPDATE handover_signature SET by_whom = 'Ali'")) {
      assertThatThrownBy(() -> run(change)).hasMessageContaining("never");
    }
  }

  @Test
  void alarmsAreReadAsPeopleMetThem() throws Exception {
    SmallFilm film = SmallFilm.withSampleAt(60, NOW);
    test.plant().learnStructures("s.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", film.usual(0, 55));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
    test.read("once.csv", film.thinnerSkin(55, 56, 1));
    test.read("quiet.csv", film.usual(56, 57));
    test.read("again.csv", film.thinnerSkin(57, 59, 1));
    test.read("end.csv", film.usual(59, 60));
    AlarmSpan hour = new AlarmSpan(NOW.minusSeconds(3600), NOW);
    var runs =
        test.plant()
            .store()
            .read(tables -> new AlarmRuns(tables, test.plant().structures()).read(hour, ""));
    assertThat(runs).singleElement();
    assertThat(runs.get(0).topic().words()).isEqualTo("Skin: thinner than usual");
    assertThat(runs.get(0).stretches())
        .extracting(s -> List.of(s.from(), s.to(), s.lastSample() - s.firstSample()))
        .containsExactly(
            List.of(film.takenAt(55), Optional.of(film.takenAt(56)), 0L),
            List.of(film.takenAt(57), Optional.of(film.takenAt(59)), 1L));
    var told = new AlarmFiguresReader(test.plant()).read(hour, "");
    assertThat(told.figures().announced()).isEqualTo(1);
    assertThat(told.linesPerOperator()).isEqualTo(2);
  }

  private static ShiftNote note(String text, Kind kind) {
    return new ShiftNote(0, "Blown 1", NOW, NOW, "Kim", text, "", kind, Optional.empty());
  }

  private int found(String words) {
    return test.plant()
        .store()
        .read(tables -> tables.shiftNotes().search(new Search("", words, 50)))
        .size();
  }

  private List<String> carriedOver(String moment) {
    return test
        .plant()
        .store()
        .read(tables -> tables.shiftNotes().carriedOver(Instant.parse(moment)))
        .stream()
        .map(ShiftNote::text)
        .toList();
  }

  private void run(String sql) throws SQLException {
    try (Connection plain = database.plainSql(folder);
        Statement statement = plain.createStatement()) {
      statement.execute(sql);
    }
  }
}
