package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.simulate.MassBalanceLine;
import dev.filmward.simulate.MassBalanceLine.Pace;
import dev.filmward.simulate.ProofFilms;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FilmHistoryTest {
  private static final Structure SHRINK = ProofFilms.shrink().structure();
  private static final Structure LIDDING = ProofFilms.lidding().structure();
  private static final Instant NOW = Instant.parse("2026-11-18T05:00:00Z");

  private static List<Sample> samples() {
    return new MassBalanceLine(ProofFilms.shrink(), new Pace(Duration.ofMinutes(15), 0, 12), 1)
        .samples(3, (t, now, chance) -> {});
  }

  @Test
  void samplesAreOfTheStructure() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FilmHistory.of(LIDDING, samples(), NOW))
        .withMessageContaining("has 3 layers; the structure reports 7");
  }

  @Test
  void samplesComeInTimeOrder() {
    List<Sample> backwards = new ArrayList<>(samples());
    Collections.reverse(backwards);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FilmHistory.of(SHRINK, backwards, NOW))
        .withMessageContaining("is before the one before it");
  }

  @Test
  void aReferenceIsThereForAllLayersInOrderOrForNone() {
    FilmHistory history = FilmHistory.of(SHRINK, samples(), NOW);
    LayerReference one = new LayerReference(1, 18, 0.1, List.of());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> history.withReference(List.of(one)))
        .withMessageContaining("1 references for 3 reported layers");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> history.withReference(List.of(one, one, one)));
  }

  @Test
  void aReferenceIsOfNumbersAboveZero() {
    for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new LayerReference(1, wrong, 1, List.of()));
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new LayerReference(1, 1, wrong, List.of()));
    }
  }

  @ParameterizedTest
  @EnumSource
  void kindsOfBoundariesAreReadBackFromTheirWords(Boundary.Kind kind) {
    assertThat(Boundary.Kind.fromWord(kind.word())).isEqualTo(kind);
  }

  @Test
  void aFlagsKindIsAWord() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new GaugeFlag(samples().get(0).key(), "Missed boundary", List.of()));
  }

  @Test
  void anIntervalHoldsItsMoment() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Since(NOW, Optional.of(NOW.plusSeconds(1)), NOW));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Since(NOW, Optional.empty(), NOW.minusSeconds(1)));
  }
}
