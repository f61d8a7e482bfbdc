package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.gauge.study.ReferencePiece;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Readings of one check standard in time. */
class CheckStandardTest {

  /** 10 and 11 in turn: mean 10.5, every moving range 1; ISO 7870-2: 2.660 and 3.267 times that. */
  private static List<Double> steady() {
    List<Double> um = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      um.add(10.0 + i % 2);
    }
    return um;
  }

  @Test
  void limitsAreThoseOfIndividualsAndMovingRanges() {
    CheckStandard standard = CheckStandard.of(piece(steady())).orElseThrow();
    assertThat(standard.value().centre()).isCloseTo(10.5, within(1e-12));
    assertThat(standard.value().upper()).isCloseTo(10.5 + 2.660, within(2e-3));
    assertThat(standard.value().lower()).isCloseTo(10.5 - 2.660, within(2e-3));
    assertThat(standard.movingRange().upper()).isCloseTo(3.267, within(2e-3));
    assertThat(standard.beyond()).isEmpty();
  }

  /** Reading 17 is 19: moving ranges 9 and 9 there, 27 of 1; so the mean one is 45/29 = 1.552. */
  @Test
  void aReadingThatJumpsIsNamedAndSoIsTheJumpBack() {
    List<Double> um = steady();
    um.set(17, 19.0);
    CheckStandard standard = CheckStandard.of(piece(um)).orElseThrow();
    assertThat(standard.movingRange().upper()).isCloseTo(3.267 * 45 / 29, within(5e-3));
    assertThat(standard.beyond()).containsExactly(17, 18);
  }

  @Test
  void fewReadingsAndSuchThatNeverDifferSayNothing() {
    assertThat(CheckStandard.of(piece(steady().subList(0, 19)))).isEmpty();
    assertThat(CheckStandard.of(piece(Collections.nCopies(30, 10.0)))).isEmpty();
  }

  private static ReferencePiece piece(List<Double> um) {
    return new ReferencePiece("foil", 10, um);
  }
}
