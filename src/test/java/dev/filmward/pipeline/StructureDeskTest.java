package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.pipeline.StructureDesk.Word;
import dev.filmward.pipeline.StructureVersion.Standing;
import dev.filmward.store.Store;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Versions of structures: who, why, from when on, and the way back. */
@ParameterizedClass
@EnumSource(TestDatabase.class)
class StructureDeskTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final String FILE = "film.yaml";
  private static final String WIDER = SmallFilm.STRUCTURES.replace("upper: 23 um", "upper: 24 um");
  private static final String WIDEST = SmallFilm.STRUCTURES.replace("upper: 23 um", "upper: 25 um");

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private Instant now = NOON;
  private Store store;
  private Plant plant;
  private StructureDesk desk;

  private void open() {
    store = database.open(folder);
    plant = new Plant(store, new Moving(), ZoneId.of("Europe/Berlin"));
    desk = new StructureDesk(plant);
  }

  @AfterEach
  void close() {
    plant.close();
  }

  /** A clock that the test puts on. */
  private final class Moving extends Clock {
    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private void keep(String yaml, String why, Optional<Instant> from) throws Exception {
    desk.keep(FILE, bytes(yaml), new Word("Kim", why, from, Optional.empty()));
  }

  private static byte[] bytes(String yaml) {
    return yaml.getBytes(StandardCharsets.UTF_8);
  }

  private double upperOfSkin() {
    return plant
        .structures()
        .find(SmallFilm.CODE)
        .orElseThrow()
        .reported()
        .get(0)
        .individual()
        .upper()
        .orElseThrow();
  }

  private KnownStructure film() {
    return desk.all().get(0);
  }

  private List<Standing> standings() {
    return film().versions().stream().map(StructureVersion::standing).toList();
  }

  @Test
  void aVersionHasWhoWhenWhyAndWhatChangedAlsoAfterARestart() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first film", Optional.empty());
    now = NOON.plusSeconds(60);
    keep(WIDER, "customer agreed", Optional.empty());
    plant.close();
    open();

    assertThat(upperOfSkin()).isEqualTo(24);
    StructureVersion second = film().versions().get(1);
    assertThat(second.number()).isEqualTo(2);
    assertThat(second.file().given().by()).isEqualTo("Kim");
    assertThat(second.file().given().reason()).isEqualTo("customer agreed");
    assertThat(second.file().given().receivedAt()).isEqualTo(now);
    assertThat(second.changes()).extracting(StructureChange::what).containsExactly("upper");
    assertThat(standings()).containsExactly(Standing.PAST, Standing.IN_FORCE);
    assertThat(store.read(tables -> tables.audit().newest(1)).get(0).entry())
        .satisfies(
            entry -> {
              assertThat(entry.by()).isEqualTo("Kim");
              assertThat(entry.action()).isEqualTo("structures");
              assertThat(entry.detail()).startsWith("customer agreed\n").endsWith(WIDER);
            });
  }

  @Test
  void aPlannedVersionHoldsFromItsMomentOnAndNotBefore() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    Instant tomorrow = NOON.plus(Duration.ofDays(1));
    keep(WIDER, "new contract", Optional.of(tomorrow));
    assertThat(upperOfSkin()).isEqualTo(23);
    assertThat(standings()).containsExactly(Standing.IN_FORCE, Standing.PLANNED);

    now = tomorrow.minusSeconds(1);
    assertThat(upperOfSkin()).isEqualTo(23);
    now = tomorrow;
    assertThat(upperOfSkin()).isEqualTo(24);
    assertThat(standings()).containsExactly(Standing.PAST, Standing.IN_FORCE);
  }

  @Test
  void aVersionGivenMeanwhileHoldsUntilThePlannedOneComes() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    Instant tomorrow = NOON.plus(Duration.ofDays(1));
    keep(WIDEST, "new contract", Optional.of(tomorrow));
    now = NOON.plusSeconds(60);
    keep(WIDER, "until then", Optional.empty());
    assertThat(upperOfSkin()).isEqualTo(24);
    now = tomorrow.plusSeconds(60);
    assertThat(upperOfSkin()).isEqualTo(25);
    keep(WIDER, "back", Optional.empty());
    assertThat(upperOfSkin()).isEqualTo(24);
  }

  @Test
  void aMomentThatIsOverIsRefused() {
    open();
    assertThatThrownBy(() -> keep(SmallFilm.STRUCTURES, "late", Optional.of(NOON)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("stays as it was judged");
    assertThat(desk.all()).isEmpty();
  }

  @Test
  void theNewestVersionIsTakenBackAsAVersionOfItsOwn() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    keep(WIDER, "by mistake", Optional.empty());
    desk.takeBack(SmallFilm.CODE, 2, "Jo", "wrong film");

    assertThat(upperOfSkin()).isEqualTo(23);
    StructureVersion third = film().newest();
    assertThat(third.number()).isEqualTo(3);
    assertThat(third.file().given().reason()).isEqualTo("wrong film");
    assertThat(third.file().given().takesBack()).hasValue(film().versions().get(1).file().id());
    assertThat(film().versions().get(0).structure()).isEqualTo(third.structure());
  }

  @Test
  void aPlannedVersionThatIsTakenBackNeverHolds() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    Instant tomorrow = NOON.plus(Duration.ofDays(1));
    keep(WIDER, "by mistake", Optional.of(tomorrow));
    now = NOON.plusSeconds(60);
    desk.takeBack(SmallFilm.CODE, 2, "Jo", "wrong film");
    now = tomorrow.plusSeconds(1);
    assertThat(upperOfSkin()).isEqualTo(23);
  }

  @Test
  void whatCannotBeTakenBackIsRefused() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    assertRefused(1);
    keep(WIDER, "second", Optional.empty());
    keep(WIDEST, "third", Optional.empty());
    assertRefused(2);
    now = NOON.plus(Duration.ofHours(24));
    assertRefused(3);
    assertThat(upperOfSkin()).isEqualTo(25);
  }

  private void assertRefused(int version) {
    assertThatThrownBy(() -> desk.takeBack(SmallFilm.CODE, version, "Jo", "no"))
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void anotherNumberOfLayersUnderReadingsIsRefused() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    String merged = SmallFilm.STRUCTURES + "    reported: [[Skin, Seal]]\n";
    assertThat(desk.preview(FILE, bytes(merged)).entries().get(0).otherLayers()).isFalse();
    byte[] csv = bytes(SmallFilm.withSampleAt(3, NOON).usual(0, 3));
    plant.read(new IncomingFile("a.csv", "watch", () -> new ByteArrayInputStream(csv)));

    assertThat(desk.preview(FILE, bytes(merged)).entries().get(0).otherLayers()).isTrue();
    assertThatThrownBy(() -> keep(merged, "one echo less", Optional.empty()))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("3 samples of DUO-50")
        .hasMessageContaining("a code of its own");
    keep(WIDER, "as many layers", Optional.empty());
  }

  @Test
  void whoeverSawAnOlderFileIsTold() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    long seen = desk.newest();
    keep(WIDER, "second", Optional.empty());
    Word late = new Word("Jo", "third", Optional.empty(), Optional.of(seen));
    assertThatThrownBy(() -> desk.keep(FILE, bytes(WIDEST), late))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("Kim gave");
  }

  @Test
  void theFileOfTheStartDoesNotUndoWhatPeopleDecidedSince() throws Exception {
    open();
    plant.learnStructuresAtStart("start.yaml", bytes(SmallFilm.STRUCTURES));
    keep(WIDER, "customer agreed", Optional.empty());
    plant.learnStructuresAtStart("start.yaml", bytes(SmallFilm.STRUCTURES));
    assertThat(upperOfSkin()).isEqualTo(24);
    plant.learnStructuresAtStart("start.yaml", bytes(WIDEST));
    assertThat(upperOfSkin()).isEqualTo(25);
  }

  @Test
  void aFileThatSaysTheSameIsNoVersion() throws Exception {
    open();
    keep(SmallFilm.STRUCTURES, "first", Optional.empty());
    keep("# with a remark\n" + SmallFilm.STRUCTURES, "remark", Optional.empty());
    assertThat(standings()).containsExactly(Standing.IN_FORCE);
    assertThat(film().takeBack()).isEmpty();
  }

  @Test
  void openPagesAreToldOnceWhenAVersionTakesHold() throws Exception {
    open();
    plant.learnStructures(FILE, bytes(SmallFilm.STRUCTURES));
    SmallFilm film = SmallFilm.withSampleAt(30, NOON);
    plant.read(
        new IncomingFile(
            "a.csv", "watch", () -> new ByteArrayInputStream(bytes(film.usual(0, 2)))));
    List<PlantEvent> heard = new ArrayList<>();
    plant.listen(heard::add);
    PlantEvent told = new PlantEvent.LimitsFrozen(SmallFilm.LINE, SmallFilm.CODE);
    keep(WIDER, "at once", Optional.empty());
    assertThat(heard).containsExactly(told);
    keep(WIDEST, "tomorrow", Optional.of(NOON.plus(Duration.ofDays(1))));
    plant.lookAtStructures();
    assertThat(heard).containsExactly(told);
    now = NOON.plus(Duration.ofDays(1));
    plant.lookAtStructures();
    plant.lookAtStructures();
    assertThat(heard).containsExactly(told, told);
    assertThat(upperOfSkin()).isEqualTo(25);
  }
}
