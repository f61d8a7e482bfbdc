package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.report.WeekReader.Scope;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** This week stands beside the last one by the same method, or the method looks like a change. */
class TrendTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  @TempDir private Path folder;

  @Test
  void twoWeeksOfTheSameSkewedReadingsHaveTheSameIndexInTheTrend() throws Exception {
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"))) {
      Path run = Path.of("sample-runs/shrink-in-control");
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("week-46.csv", skewed("2026-11-10T06:00:00", "A"));
      plant.read("week-47.csv", skewed("2026-11-17T06:00:00", "B"));
      CharacteristicWeek now = outerSkin(plant, "2026-W47");
      assertThat(now.index().method()).isEqualTo(IndexWeek.Method.PERCENTILES);
      List<TrendWeek> trend = now.trend();
      assertThat(trend).hasSize(WeekReader.TREND);
      TrendWeek last = trend.get(trend.size() - 2);
      assertThat(last.week()).isEqualTo("2026-W46");
      assertThat(last.ppk()).isPresent().isEqualTo(now.index().ppk());
      assertThat(last.ppk()).isEqualTo(outerSkin(plant, "2026-W46").index().ppk());
    }
  }

  /** 49 readings are too few for an index and 60 are not, in each place of the trend. */
  @Test
  void weeksWithTooFewReadingsHaveNoIndexInTheTrend() throws Exception {
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"))) {
      Path run = Path.of("sample-runs/shrink-in-control");
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("week-43.csv", readings("2026-10-20T06:00:00", "A", 60));
      plant.read("week-44.csv", readings("2026-10-27T06:00:00", "B", 49));
      plant.read("week-46.csv", readings("2026-11-10T06:00:00", "C", 49));
      plant.read("week-47.csv", readings("2026-11-17T06:00:00", "D", 49));
      CharacteristicWeek now = outerSkin(plant, "2026-W47");
      assertThat(now.index().why()).isEqualTo(IndexWeek.Why.TOO_FEW);
      assertThat(now.expectedPpm()).isEmpty();
      List<TrendWeek> trend = now.trend();
      assertThat(trend)
          .filteredOn(week -> week.samples() > 0)
          .extracting(week -> week.week() + " " + week.ppk().isPresent())
          .containsExactly("2026-W43 true", "2026-W44 false", "2026-W46 false", "2026-W47 false");
      assertThat(trend).filteredOn(week -> week.ppk().isEmpty()).allMatch(this::hasNoLimit);
    }
  }

  private boolean hasNoLimit(TrendWeek week) {
    return week.atLeast().isEmpty();
  }

  private static CharacteristicWeek outerSkin(TestPlant plant, String week) {
    return new WeekReader(plant.plant(), "test")
        .read(ReportWeek.parse(week, ZONE), Scope.ALL, ReportSettings.USUAL)
        .films()
        .get(0)
        .characteristics()
        .get(0);
  }

  /** 400 samples of five lanes: quantiles of an exponential distribution, well mixed. */
  private static String skewed(String from, String roll) {
    return readings(from, roll, 2000);
  }

  private static String readings(String from, String roll, int readings) {
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer,thickness_um\n");
    LocalDateTime at = LocalDateTime.parse(from);
    for (int i = 0; i < readings; i++) {
      double part = ((i * 1237L) % 2000 + 0.5) / 2000;
      double skew = -0.35 * Math.log1p(-part);
      for (String layer : List.of("Outer skin", "Core", "Inner skin")) {
        csv.append(
            String.format(
                Locale.ROOT,
                "%s,Blown 2,SHR-60,%s,S%03d,%d,%s,%.3f%n",
                at.plusMinutes(i / 5 * 10L),
                roll,
                i / 5,
                i % 5 + 1,
                layer,
                (layer.equals("Core") ? 23.6 : 17.6) + skew));
      }
    }
    return csv.toString();
  }
}
