package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.SeriesReader.Address;
import dev.filmward.pipeline.SeriesView.SignalAt;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.TestDatabase;
import dev.filmward.subgroup.Subgroup;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** A film of one layer, one lane, a sample a minute: its mean is its one reading. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class SeriesReaderTest {
  @Parameter private TestDatabase database;

  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");
  private static final int SAMPLES = 10_000;
  private static final int PIXELS = 400;
  private static final String STRUCTURES =
      """
      structures:
        - code: ONE
          name: One layer
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 20 um, lower: 10 um, upper: 30 um}
      """;

  @TempDir private Path folder;
  private TestPlant plant;

  @BeforeEach
  void fill() throws Exception {
    plant = new TestPlant(database, folder, START);
    plant.plant().learnStructures("one.yaml", STRUCTURES.getBytes(StandardCharsets.UTF_8));
    StringBuilder csv = new StringBuilder("taken_at,line,structure,roll,sample,lane,layer_1_um\n");
    for (int i = 0; i < SAMPLES; i++) {
      for (int lane = 1; lane <= 2; lane++) {
        csv.append(START.plusSeconds(60L * i)).append(",L,ONE,R,").append(name(i));
        csv.append(String.format(Locale.ROOT, ",%d,%.3f\n", lane, um(i) + 0.1 * lane));
      }
    }
    plant.read("one.csv", csv.toString());
  }

  @AfterEach
  void close() {
    plant.close();
  }

  /** Up and down by 0.1 um, which no test minds, but for one deep point and one high one. */
  private static double um(int i) {
    return switch (i) {
      case 3333 -> 15;
      case 7778 -> 25;
      default -> i % 2 == 0 ? 20.1 : 19.9;
    };
  }

  private static String name(int i) {
    return String.format(Locale.ROOT, "S%05d", i);
  }

  private SeriesView read(int pixels) {
    return new SeriesReader(plant.plant())
        .read(new Address("L", "ONE", Characteristic.Kind.LAYER, 1), Span.always(), pixels);
  }

  @Test
  void showsAsManyPointsAsTheChartCanAndTheOutermostOfThem() {
    List<FigureRow> rows = read(PIXELS).rows();
    assertThat(rows.size()).isBetween(300, 300 + 6 * PIXELS / 4);
    assertThat(rows.get(0).key().sample()).isEqualTo(name(0));
    assertThat(rows).extracting(row -> row.key().sample()).contains(name(3333), name(7778));
    List<String> newest = IntStream.range(SAMPLES - 300, SAMPLES).mapToObj(i -> name(i)).toList();
    assertThat(rows.subList(rows.size() - 300, rows.size()))
        .extracting(row -> row.key().sample())
        .isEqualTo(newest);
  }

  @Test
  void aShortSeriesIsWhole() {
    assertThat(read(8000).rows()).hasSize(SAMPLES);
    assertThat(read(Integer.MAX_VALUE).rows()).hasSize(SAMPLES);
  }

  @Test
  void saysTheSameFiguresOfAllSamplesHoweverFewAreShown() {
    assertThat(read(PIXELS).summary()).isEqualTo(read(Integer.MAX_VALUE).summary());
    assertThat(read(PIXELS).summary().samples()).isEqualTo(SAMPLES);
    assertThat(read(PIXELS).summary().readings()).isEqualTo(2 * SAMPLES);
  }

  @Test
  void everySignalIsShownAtItsSampleUnderTrialLimitsAndFrozenOnes() {
    expectSignals();
    plant.freeze("L", "ONE");
    expectSignals();
  }

  private void expectSignals() {
    SeriesView few = read(PIXELS);
    SeriesView all = read(Integer.MAX_VALUE);
    assertThat(signals(few)).isEqualTo(signals(all)).isNotEmpty();
    for (SignalAt at : few.signals()) {
      Subgroup subgroup = few.rows().get(at.index()).subgroup().orElseThrow();
      assertThat(Math.abs(subgroup.mean() - 20.15)).isGreaterThan(1);
    }
  }

  private static List<String> signals(SeriesView view) {
    return view.signals().stream()
        .map(at -> view.rows().get(at.index()).key().sample() + at.signal())
        .sorted()
        .toList();
  }
}
