package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Sender;
import dev.filmward.web.SmallFilm;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files reach the inbox in many ways, not all of them tidy; each reading is kept once. */
class InboxTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final SmallFilm FILM = SmallFilm.withSampleAt(10_000, NOW);
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  @TempDir private Path folder;
  private TestPlant test;
  private Path inbox;
  private Inbox watching;

  @BeforeEach
  void watch() throws Exception {
    test = new TestPlant(folder.resolve("data"), NOW);
    test.plant()
        .learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    inbox = folder.resolve("data/inbox");
    watching = Inbox.watch(test.plant(), inbox);
  }

  @AfterEach
  void stop() {
    watching.close();
    test.close();
  }

  @Test
  void aFileIsFiledWithItsSummaryBesideIt() throws Exception {
    String good = FILM.usual(0, 2);
    String bad = good.lines().skip(1).findFirst().orElseThrow().replace("19.7", "l9.7") + "\n";
    put("a.csv", good + bad);
    until("a.csv is filed", () -> Files.exists(inbox.resolve("done/a.csv")));
    assertThat(inbox.resolve("done/a.csv.summary.txt"))
        .content()
        .startsWith("a.csv, file 1, 2026-11-20 13:00:00 +01:00\n")
        // 11 rows of two layers: 22 readings, of which one cell of the eleventh row is not usable
        .contains("11 rows: 21 readings, 0 missing, 1 in quarantine\n")
        .contains("20 new, 1 known already, 0 corrected\n")
        .contains("line 12, column layer_1_um: ")
        .contains("filmward quarantine 1")
        .contains("    " + bad);
    assertThat(entries().get(0).sender()).isEqualTo(new Sender("watch folder", "a.csv"));
  }

  @Test
  void aFileThatCannotBeReadIsRefusedWithTheReasonBesideIt() throws Exception {
    put("holiday.csv", "date,colour\n2026-11-20,blue\n");
    until("it is filed", () -> Files.exists(inbox.resolve("refused/holiday.csv")));
    assertThat(inbox.resolve("refused/holiday.csv.summary.txt"))
        .content()
        .contains("Refused, nothing was read: ")
        .contains("taken_at");
  }

  @Test
  void foldersInTheInboxAreReadAndKeptApart() throws Exception {
    put("gauge 1/a.csv", FILM.usual(0, 1));
    put("gauge 2/night/a.csv", FILM.usual(1, 2));
    put(".partly/a.csv", FILM.usual(2, 3));
    until("both are filed", () -> filed("done") == 2);
    assertThat(inbox.resolve("done/gauge 1/a.csv")).exists();
    assertThat(inbox.resolve("done/gauge 2/night/a.csv")).exists();
    assertThat(inbox.resolve(".partly/a.csv")).exists();
    assertThat(names()).containsExactlyInAnyOrder("gauge 1/a.csv", "gauge 2/night/a.csv");
  }

  @Test
  void aNameThatCameBeforeGetsANumber() throws Exception {
    put("a.csv", FILM.usual(0, 1));
    until("the first is filed", () -> Files.exists(inbox.resolve("done/a.csv")));
    put("a.csv", FILM.usual(1, 2));
    until("the second is filed", () -> Files.exists(inbox.resolve("done/a.csv.2")));
    assertThat(inbox.resolve("done/a.csv")).hasContent(FILM.usual(0, 1));
    assertThat(inbox.resolve("done/a.csv.2")).hasContent(FILM.usual(1, 2));
    assertThat(samples()).isEqualTo(2);
  }

  @Test
  void aFileThatIsStillBeingWrittenWaits() throws Exception {
    byte[] all = FILM.usual(0, 8).getBytes(StandardCharsets.UTF_8);
    Path file = inbox.resolve("slow.csv");
    int step = all.length / 20;
    try (OutputStream out = Files.newOutputStream(file)) {
      for (int at = 0; at < all.length; at += step) {
        out.write(all, at, Math.min(step, all.length - at));
        Thread.sleep(150);
      }
    }
    until("it is filed", () -> Files.exists(inbox.resolve("done/slow.csv")));
    // 5 lanes x 8 samples, 2 layers; one go, and no row cut in two
    assertThat(entries()).singleElement().extracting(e -> e.counts().rows()).isEqualTo(40L);
    assertThat(entries().get(0).counts().quarantined()).isZero();
  }

  @Test
  void aWriterThatPausedAndThenWritesOnLosesNothing() throws Exception {
    String all = FILM.usual(0, 8);
    int cut = all.indexOf("\n", all.length() / 2) + 1;
    Path file = inbox.resolve("pause.csv");
    try (OutputStream out = Files.newOutputStream(file)) {
      out.write(all.substring(0, cut).getBytes(StandardCharsets.UTF_8));
      out.flush();
      until("its first half is filed", () -> Files.exists(inbox.resolve("done/pause.csv")));
      out.write(all.substring(cut).getBytes(StandardCharsets.UTF_8));
    }
    until("all samples are there", () -> samples() == 8);
    until("it is filed again", () -> Files.exists(inbox.resolve("done/pause.csv")));
    assertThat(inbox.resolve("done/pause.csv")).hasContent(all);
    FileEntry again = entries().get(0);
    // 40 rows of 2 layers, all of them read; those of the first half were known
    assertThat(again.counts().readings()).isEqualTo(80);
    assertThat(again.counts().arrivals().corrected()).isZero();
  }

  @Test
  void aFileThatIsRenamedWhenItIsCompleteIsReadOnceAndOneThatIsNotIsLeftAlone() throws Exception {
    put("a.csv.part", FILM.usual(0, 1));
    put("b.csv.tmp", FILM.usual(1, 2));
    Thread.sleep(1_500);
    assertThat(samples()).isZero();
    Files.move(inbox.resolve("a.csv.part"), inbox.resolve("a.csv"));
    until("it is filed", () -> Files.exists(inbox.resolve("done/a.csv")));
    assertThat(samples()).isEqualTo(1);
    assertThat(inbox.resolve("b.csv.tmp")).exists();
  }

  @Test
  void aFileThatIsReplacedWhileItWaitsIsReadAsTheNewOne() throws Exception {
    String first = FILM.usual(0, 1);
    String second = FILM.thinnerSkin(0, 1, 0.5);
    assertThat(second).hasSameSizeAs(first);
    Path next = Files.writeString(folder.resolve("next"), second);
    FileTime time = FileTime.from(NOW);
    Files.setLastModifiedTime(next, time);
    Path file = put("a.csv", first);
    Files.setLastModifiedTime(file, time);
    Files.move(next, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    until("it is filed", () -> filed("done") == 1);
    assertThat(meansOfTheSkin()).singleElement().isEqualTo(SmallFilm.SKIN_UM + 0.1 - 0.5);
  }

  @Test
  void aFileThatCannotBeOpenedYetStaysHoldsUpNobodyAndIsReadLater() throws Exception {
    Path elsewhere = folder.resolve("elsewhere.csv");
    Files.createSymbolicLink(inbox.resolve("a.csv"), elsewhere);
    put("b.csv", FILM.usual(1, 2));
    until("the other is filed", () -> Files.exists(inbox.resolve("done/b.csv")));
    assertThat(samples()).isEqualTo(1);
    Files.writeString(elsewhere, FILM.usual(0, 1));
    until("it is filed", () -> Files.exists(inbox.resolve("done/a.csv")));
    assertThat(samples()).isEqualTo(2);
  }

  @Test
  void theLastLineMayLackItsEnd() throws Exception {
    put("a.csv", FILM.usual(0, 1).stripTrailing());
    until("it is filed", () -> Files.exists(inbox.resolve("done/a.csv")));
    assertThat(entries().get(0).counts().readings()).isEqualTo(10);
  }

  @Test
  void thousandsAtOnceAreReadInTheOrderInWhichTheyWereWritten() throws Exception {
    int files = 2_000;
    Path heap = Files.createDirectories(folder.resolve("heap"));
    for (int i = 0; i < files; i++) {
      // names fall in another order than times
      Path file = heap.resolve((files - i) + ".csv");
      Files.writeString(file, FILM.usual(i, i + 1));
      Files.setLastModifiedTime(file, FileTime.from(NOW.plusSeconds(i)));
    }
    Files.move(heap, inbox.resolve("heap"));
    until("all are filed", () -> filed("done") == files);
    assertThat(samples()).isEqualTo(files);
    assertThat(names().subList(files - 3, files))
        .containsExactly(
            "heap/" + (files - 2) + ".csv",
            "heap/" + (files - 1) + ".csv",
            "heap/" + files + ".csv");
  }

  private Path put(String name, String csv) throws IOException {
    Path file = inbox.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, csv, StandardOpenOption.CREATE_NEW);
  }

  private long filed(String outcome) throws IOException {
    Path filed = inbox.resolve(outcome);
    if (!Files.exists(filed)) {
      return 0;
    }
    try (Stream<Path> files = Files.walk(filed)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> !file.toString().endsWith(".summary.txt"))
          .count();
    }
  }

  /** Newest first. */
  private List<FileEntry> entries() {
    return test.plant().store().read(tables -> tables.files().newest(5_000));
  }

  private List<String> names() {
    return entries().stream().map(FileEntry::name).toList();
  }

  private long samples() {
    return skin().stream().map(SampleKey::sample).distinct().count();
  }

  private List<SampleKey> skin() {
    Series series = new Series(SmallFilm.LINE, SmallFilm.CODE, 1);
    return test.plant()
        .store()
        .read(
            tables ->
                tables.figures().within(series, Span.always()).stream()
                    .map(row -> row.key())
                    .toList());
  }

  private List<Double> meansOfTheSkin() {
    Series series = new Series(SmallFilm.LINE, SmallFilm.CODE, 1);
    return test.plant()
        .store()
        .read(
            tables ->
                tables.figures().within(series, Span.always()).stream()
                    .map(
                        row -> (double) Math.round(row.subgroup().orElseThrow().mean() * 1e6) / 1e6)
                    .toList());
  }

  private static void until(String what, Callable<Boolean> condition) throws Exception {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!condition.call()) {
      assertThat(System.nanoTime()).as("not within " + PATIENCE + ": " + what).isLessThan(end);
      Thread.sleep(20);
    }
  }
}
