package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.alarm.AlarmFigures.Frequent;
import dev.filmward.alarm.AlarmFigures.Question;
import dev.filmward.alarm.AlarmRun.Stretch;
import dev.filmward.alarm.AlarmRun.Topic;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AlarmFiguresTest {
  private static final Instant START = Instant.parse("2026-11-20T00:00:00Z");
  private static final AlarmSpan DAY = new AlarmSpan(START, START.plusSeconds(86_400));
  private static final Topic SKIN = new Topic("L1", "DUO", Deviation.THINNER, "Skin: thinner");
  private static final Topic SEAL = new Topic("L2", "DUO", Deviation.THICKER, "Seal: thicker");

  private long ids;

  @Test
  void ratesAreCountedForEachPositionAndTheirPeaksTold() {
    // L1: two in the hour from 3, one in that from 10; L2: one in that from 3
    List<AlarmRun> runs =
        List.of(at(SKIN, 3 * 60), at(SKIN, 3 * 60 + 59), at(SKIN, 600), at(SEAL, 181));
    AlarmFigures figures = figures(runs, List.of(List.of("L1"), List.of("L2")));
    assertThat(figures.announced()).isEqualTo(4);
    assertThat(figures.rates().hour().average()).isCloseTo(4 / (24 * 2.0), within(1e-12));
    assertThat(figures.rates().hour().peak()).isEqualTo(2);
    assertThat(figures.rates().hour().peakAt()).contains(START.plusSeconds(3 * 3600));
    assertThat(figures.rates().day().average()).isCloseTo(2, within(1e-12));
    assertThat(figures.rates().day().peak()).isEqualTo(3);
    assertThat(figures.rates().shift().average()).isCloseTo(4 / 6.0, within(1e-12));
    assertThat(figures.rates().tenMinutes().peak()).isEqualTo(1);
  }

  @Test
  void onePositionForBothLinesHasTheAlarmsOfBoth() {
    List<AlarmRun> runs = List.of(at(SKIN, 180), at(SEAL, 181));
    AlarmFigures figures = figures(runs, List.of(List.of("L1", "L2")));
    assertThat(figures.rates().tenMinutes().peak()).isEqualTo(2);
    assertThat(figures.rates().day().average()).isCloseTo(2, within(1e-12));
  }

  @Test
  void elevenInTenMinutesAreAFloodUntilFewerThanFiveAreLeft() {
    // one a minute from minute 100 to 110: the eleventh comes at 110, when the first is just over
    List<AlarmRun> tenMinutes = minutes(100, 111);
    assertThat(figures(tenMinutes, one()).floods()).isEmpty();
    List<AlarmRun> runs = new ArrayList<>(tenMinutes);
    runs.add(at(SKIN, 110));
    // at 110: 101 to 110 and one more are 11; at 117 those of 108, 109, 110, 110 are left
    AlarmFigures figures = figures(runs, one());
    assertThat(figures.floods())
        .containsExactly(
            new AlarmFlood(START.plusSeconds(110 * 60), START.plusSeconds(117 * 60), 11));
    assertThat(figures.shareInFlood()).isCloseTo(7 / 1440.0, within(1e-12));
  }

  @Test
  void moreThanThirtyInAnHourMakeItABusyOne() {
    List<AlarmRun> runs = new ArrayList<>();
    IntStream.range(0, 31).forEach(i -> runs.add(at(SKIN, 60 + i)));
    IntStream.range(0, 30).forEach(i -> runs.add(at(SKIN, 240 + i)));
    assertThat(figures(runs, one()).shareOfBusyHours()).isCloseTo(1 / 24.0, within(1e-12));
  }

  @Test
  void whatSignalsForMoreThanADayIsStale() {
    Instant before = START.minusSeconds(3600);
    AlarmRun over = run(SKIN, new Stretch(before, Optional.of(before.plusSeconds(86_401)), 0, 9));
    AlarmRun goesOn = run(SKIN, new Stretch(before, Optional.empty(), 0, 9));
    AlarmRun justADay =
        run(SKIN, new Stretch(before, Optional.of(before.plusSeconds(86_400)), 0, 9));
    AlarmFigures figures = figures(List.of(over, goesOn, justADay), one());
    assertThat(figures.announced()).isZero();
    assertThat(figures.stale()).isEqualTo(new AlarmFigures.Stale(1, 2));
  }

  @Test
  void threeRaisesWithinTenSamplesChatter() {
    assertThat(figures(List.of(raised(SKIN, 0, 4, 9)), one()).chattering()).containsExactly(SKIN);
    assertThat(figures(List.of(raised(SKIN, 0, 4, 10)), one()).chattering()).isEmpty();
    // three alarms of one topic chatter as one alarm that comes back does
    List<AlarmRun> three = List.of(raised(SKIN, 0), raised(SKIN, 20), raised(SKIN, 25));
    assertThat(figures(three, one()).chattering()).isEmpty();
    List<AlarmRun> close = List.of(raised(SKIN, 20), raised(SKIN, 25), raised(SKIN, 29));
    assertThat(figures(close, one()).chattering()).containsExactly(SKIN);
  }

  @Test
  void threeChangesWithinAMinuteChatter() {
    Instant on = START.plusSeconds(100);
    AlarmRun quick =
        run(
            SKIN,
            new Stretch(on, Optional.of(on.plusSeconds(20)), 0, 0),
            new Stretch(on.plusSeconds(60), Optional.of(on.plusSeconds(900)), 50, 50));
    assertThat(figures(List.of(quick), one()).chattering()).containsExactly(SKIN);
  }

  @Test
  void oneSampleThatNobodyCouldAnswerIsFleeting() {
    Instant next = START.plusSeconds(360);
    Stretch one = new Stretch(START.plusSeconds(60), Optional.of(next), 1, 1);
    AlarmRun fleeting = run(SKIN, one);
    AlarmRun answered =
        new AlarmRun(9, SKIN, Priority.LOW, List.of(one), Optional.of(START.plusSeconds(300)));
    AlarmRun late =
        new AlarmRun(9, SKIN, Priority.LOW, List.of(one), Optional.of(START.plusSeconds(900)));
    AlarmRun goesOn = run(SKIN, new Stretch(START.plusSeconds(60), Optional.empty(), 1, 1));
    assertThat(figures(List.of(fleeting, answered, late, goesOn), one()).fleeting()).isEqualTo(2);
  }

  @Test
  void topicsStandByTheirShareAndPrioritiesAreCounted() {
    List<AlarmRun> runs = List.of(at(SEAL, 1), at(SKIN, 2), at(SKIN, 3), at(SKIN, 4));
    AlarmFigures figures = figures(runs, one());
    assertThat(figures.frequent())
        .containsExactly(new Frequent(SKIN, 3, 0.75), new Frequent(SEAL, 1, 0.25));
    assertThat(figures.shareOfFirst(1)).isEqualTo(0.75);
    assertThat(figures.byPriority())
        .containsEntry(Priority.LOW, 4)
        .containsEntry(Priority.MEDIUM, 0)
        .containsEntry(Priority.HIGH, 0);
  }

  @Test
  void timesToTakeAnAlarmAreToldByRank() {
    List<AlarmRun> runs = new ArrayList<>();
    for (int minutes = 1; minutes <= 10; minutes++) {
      runs.add(takenAfter(minutes));
    }
    runs.add(at(SKIN, 5));
    AlarmFigures.Answered answered = figures(runs, one()).answered();
    assertThat(answered.taken()).isEqualTo(10);
    assertThat(answered.waiting()).isEqualTo(1);
    assertThat(answered.median()).contains(Duration.ofMinutes(5));
    assertThat(answered.nineOfTen()).contains(Duration.ofMinutes(9));
  }

  @Test
  void aQuietTimeHasNoFigures() {
    AlarmFigures figures = figures(List.of(), one());
    assertThat(figures.rates().hour()).isEqualTo(new AlarmRate(0, 0, Optional.empty()));
    assertThat(figures.frequent()).isEmpty();
    assertThat(figures.answered().median()).isEmpty();
  }

  /** Counted second by second, as one would with a stopwatch. */
  @Test
  void floodsAndPeaksAreThoseOfASecondBySecondCount() {
    for (int round = 0; round < 40; round++) {
      long seed = new Random().nextLong();
      Random random = new Random(seed);
      int[] perSecond = new int[7200];
      List<Instant> moments = new ArrayList<>();
      int second = 0;
      while ((second += 1 + random.nextInt(random.nextInt(4) == 0 ? 700 : 70)) < 7200) {
        perSecond[second]++;
        moments.add(START.plusSeconds(second));
      }
      int flooded =
          AlarmFlood.of(moments, START.plusSeconds(7200)).stream()
              .mapToInt(flood -> (int) flood.length().getSeconds())
              .sum();
      assertThat(flooded).as("seed %d", seed).isEqualTo(secondsInFlood(perSecond));
    }
  }

  private static int secondsInFlood(int[] perSecond) {
    int flooded = 0;
    boolean flood = false;
    for (int now = 0; now < perSecond.length; now++) {
      int within = 0;
      for (int back = 0; back < 600 && now - back >= 0; back++) {
        within += perSecond[now - back];
      }
      flood = flood ? within >= 5 : within > 10;
      flooded += flood ? 1 : 0;
    }
    return flooded;
  }

  @Test
  void oneSampleMoreSparesThoseThatEndAtOnce() {
    AlarmRun once = run(SKIN, new Stretch(START, Optional.of(DAY.to()), 3, 3));
    AlarmRun again =
        run(
            SKIN,
            new Stretch(START, Optional.of(DAY.to()), 3, 3),
            new Stretch(START.plusSeconds(900), Optional.of(DAY.to()), 6, 7));
    AlarmRun goesOn = run(SKIN, new Stretch(START, Optional.empty(), 3, 3));
    assertThat(Spared.byOneSampleMore(List.of(once, again, goesOn))).isEqualTo(2);
  }

  @Test
  void aShelfOfAShiftSparesWhatComesWhileItLasts() {
    List<AlarmRun> runs = List.of(at(SKIN, 481), at(SKIN, 0), at(SKIN, 479), at(SKIN, 960));
    // 0 opens a shelf to 480; 481 opens one to 961, in which 960 lies
    assertThat(Spared.byShelving(runs, Duration.ofHours(8))).isEqualTo(2);
    assertThat(Spared.byShelving(runs, Duration.ofMinutes(1))).isEqualTo(4);
  }

  private AlarmFigures figures(List<AlarmRun> runs, List<List<String>> lines) {
    return AlarmFigures.of(
        runs, new Question(DAY, List.of(DAY), DAY.pieces(Duration.ofHours(8)), lines));
  }

  private static List<List<String>> one() {
    return List.of(List.of("L1", "L2"));
  }

  private AlarmRun run(Topic topic, Stretch... stretches) {
    return new AlarmRun(++ids, topic, Priority.LOW, List.of(stretches), Optional.empty());
  }

  private AlarmRun at(Topic topic, int minute) {
    Instant from = START.plusSeconds(minute * 60L);
    return run(
        topic, new Stretch(from, Optional.of(from.plusSeconds(3600)), minute * 9L, minute * 9L));
  }

  private List<AlarmRun> minutes(int from, int to) {
    return IntStream.range(from, to).mapToObj(minute -> at(SKIN, minute)).toList();
  }

  /** A sample an hour, so that the clock does not chatter. */
  private AlarmRun raised(Topic topic, int... samples) {
    Stretch[] stretches = new Stretch[samples.length];
    for (int i = 0; i < samples.length; i++) {
      Instant from = START.plusSeconds(samples[i] * 1800L);
      stretches[i] = new Stretch(from, Optional.of(from.plusSeconds(1800)), samples[i], samples[i]);
    }
    return run(topic, stretches);
  }

  private AlarmRun takenAfter(int minutes) {
    Stretch stretch = new Stretch(START, Optional.of(START.plusSeconds(600)), 0, 0);
    return new AlarmRun(
        ++ids, SKIN, Priority.LOW, List.of(stretch), Optional.of(START.plusSeconds(minutes * 60L)));
  }
}
