package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.alarm.LineModes;
import dev.filmward.chart.LimitsVersion.Decision;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** A sample each half hour: 336 in a week. Counted by hand. */
class ExpectedSamplesTest {
  private static final Instant FROM = Instant.parse("2026-11-16T00:00:00Z");
  private static final Instant TO = Instant.parse("2026-11-23T00:00:00Z");
  private static final Duration USUAL = Duration.ofMinutes(30);

  @Test
  void aWholeWeekIsWhole() {
    assertThat(count(halfHours(0, 336), List.of(), true)).isEqualTo(336);
  }

  @Test
  void aGaugeThatStopsInTheWeekIsMissedToItsEnd() {
    assertThat(count(halfHours(0, 100), List.of(), true)).isEqualTo(336);
  }

  @Test
  void aGaugeThatBeginsLateIsMissedFromTheWeeksBeginningOnlyIfTheFilmWasOnTheLine() {
    assertThat(count(halfHours(100, 336), List.of(), true)).isEqualTo(336);
    assertThat(count(halfHours(100, 336), List.of(), false)).isEqualTo(236);
  }

  @Test
  void aGapWithinIsMissed() {
    List<Instant> times = new ArrayList<>(halfHours(0, 100));
    times.addAll(halfHours(150, 336));
    assertThat(count(times, List.of(), true)).isEqualTo(336);
  }

  @Test
  void whatTheLineMadeOfAnotherFilmIsNotMissed() {
    List<Instant> times = new ArrayList<>(halfHours(0, 100));
    times.addAll(halfHours(150, 200));
    List<Instant> others = new ArrayList<>(halfHours(100, 150));
    others.addAll(halfHours(200, 336));
    assertThat(count(times, others, true)).isEqualTo(150);
    assertThat(count(others, times, false)).isEqualTo(186);
  }

  @Test
  void nothingIsExpectedOfALineThatWasSaidToStand() {
    LineModes modes =
        new LineModes(
            List.of(
                change(LineMode.DOWN, FROM.plus(Duration.ofHours(50))),
                change(LineMode.RUNNING, FROM.plus(Duration.ofHours(60)))));
    ExpectedSamples expected = new ExpectedSamples(modes, List.of(), true);
    assertThat(expected.count(halfHours(0, 100), FROM, TO, USUAL)).isEqualTo(336 - 20);
    assertThat(expected.count(List.of(), FROM, TO, USUAL)).isEqualTo(336 - 20);
  }

  /** A start or changeover ends by itself with samples that come; nobody has to say so. */
  @Test
  void aLineThatWasSaidToStartRunsOnceASampleCame() {
    for (LineMode mode : List.of(LineMode.STARTING, LineMode.CHANGING_OVER)) {
      LineModes modes = new LineModes(List.of(change(mode, FROM.plus(Duration.ofHours(10)))));
      ExpectedSamples expected = new ExpectedSamples(modes, List.of(), true);
      assertThat(expected.count(halfHours(0, 100), FROM, TO, USUAL)).isEqualTo(336);
      // between two samples, none is missed until the first one comes
      List<Instant> times = new ArrayList<>(halfHours(0, 20));
      times.addAll(halfHours(40, 336));
      assertThat(expected.count(times, FROM, TO, USUAL)).isEqualTo(316);
    }
  }

  @Test
  void whatCannotHaveComeYetIsNotMissed() {
    ExpectedSamples expected = new ExpectedSamples(new LineModes(List.of()), List.of(), true);
    assertThat(expected.count(halfHours(0, 100), FROM, FROM.plus(Duration.ofHours(50)), USUAL))
        .isEqualTo(100);
  }

  @Test
  void aFilmThatWasNotOnTheLineIsNotExpected() {
    assertThat(count(List.of(), List.of(), false)).isZero();
    assertThat(count(List.of(), halfHours(0, 336), true)).isZero();
  }

  @Test
  void fewSamplesTellNoUsualTime() {
    assertThat(ExpectedSamples.usual(halfHours(0, 9))).isEmpty();
    assertThat(ExpectedSamples.usual(halfHours(0, 10))).contains(USUAL);
  }

  private static long count(List<Instant> times, List<Instant> others, boolean before) {
    return new ExpectedSamples(new LineModes(List.of()), others, before)
        .count(times, FROM, TO, USUAL);
  }

  /** The first a minute after the week began. */
  private static List<Instant> halfHours(long from, long to) {
    return LongStream.range(from, to)
        .mapToObj(i -> FROM.plusSeconds(60).plus(USUAL.multipliedBy(i)))
        .toList();
  }

  private static LineModeChange change(LineMode mode, Instant since) {
    return new LineModeChange("Blown 1", mode, since, 0, new Decision("Kim", "said", since));
  }
}
