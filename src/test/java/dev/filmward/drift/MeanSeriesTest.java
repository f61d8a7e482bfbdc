package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.stats.Restored;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class MeanSeriesTest {
  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");

  @Test
  void theOldestMeansMakeRoomForNewOnes() {
    MeanSeries series = new MeanSeries(3);
    for (int i = 0; i < 5; i++) {
      series.add(NOON.plusSeconds(i), i);
    }

    assertThat(series.size()).isEqualTo(3);
    assertThat(series.mean(0)).isEqualTo(2);
    assertThat(series.mean(2)).isEqualTo(4);
    assertThat(series.at(0)).isEqualTo(NOON.plusSeconds(2));
  }

  @Test
  void aLaterSeriesIsAppendedInOrder() {
    MeanSeries first = new MeanSeries(4);
    first.add(NOON, 1);
    MeanSeries later = Restored.from(new MeanSeries(2));
    later.add(NOON.plusSeconds(1), 2);
    first.append(Restored.from(later));

    assertThat(first.size()).isEqualTo(2);
    assertThat(first.mean(1)).isEqualTo(2);
  }

  @Test
  void whatIsOutOfOrderOrNoNumberIsRefused() {
    MeanSeries series = new MeanSeries(4);
    series.add(NOON, 1);

    assertThatThrownBy(() -> series.add(NOON.minusSeconds(1), 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("time order");
    assertThatThrownBy(() -> series.add(NOON, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new MeanSeries(0)).isInstanceOf(IllegalArgumentException.class);
    assertThat(series.size()).isEqualTo(1);
  }
}
