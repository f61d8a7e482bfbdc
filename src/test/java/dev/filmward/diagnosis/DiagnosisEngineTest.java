package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.filmward.diagnosis.Condition.Comparison;
import dev.filmward.diagnosis.Condition.Role;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.simulate.MassBalanceLine;
import dev.filmward.simulate.MassBalanceLine.Film;
import dev.filmward.simulate.MassBalanceLine.Pace;
import dev.filmward.simulate.MassBalanceLine.Trouble;
import dev.filmward.simulate.ProofFilms;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DiagnosisEngineTest {
  private static final Pace PACE = new Pace(Duration.ofMinutes(15), 0.4, 12);
  private static final int FROM = 120;

  private final DiagnosisEngine engine = new DiagnosisEngine(Signatures.builtIn());

  private static FilmHistory history(Film film, Trouble trouble) {
    List<Sample> samples = new MassBalanceLine(film, PACE, 5).samples(FROM + 24, trouble);
    return FilmHistory.of(film.structure(), samples, last(samples));
  }

  private static Instant last(List<Sample> samples) {
    return samples.get(samples.size() - 1).takenAt();
  }

  /** The haul-off runs 3 % faster: every layer is 1/1.03 - 1 = -2.9 % thinner. */
  private static void faster(int sample, MassBalanceLine.Condition now, Object chance) {
    now.speed = sample >= FROM ? 1.03 : 1;
  }

  @Test
  void aFasterHaulOffIsSeenToThinAllLayersFromThatSampleOn() {
    Diagnosis diagnosis =
        engine.diagnose(history(ProofFilms.lidding(), DiagnosisEngineTest::faster));
    Candidate best = diagnosis.shown().get(0);
    assertThat(best.signature().code()).isEqualTo("all-layers-together");
    assertThat(best.positions()).isEmpty();
    Observation step = diagnosis.changed().get(0);
    assertThat(step.shape()).isEqualTo(Observation.Shape.STEP);
    assertThat(step.since().orElseThrow().at()).isEqualTo(MassBalanceLine.at(PACE, FROM));
    assertThat(step.moves()).hasSize(8);
    LayerMove total = step.moves().get(7);
    assertThat(total.position()).isZero();
    assertThat(total.percent()).isBetween(-3.5, -2.3);
    assertThat(total.um()).isBetween(-2.1, -1.4);
    assertThat(step.moves()).allSatisfy(move -> assertThat(move.percent()).isNegative());
  }

  /** The outer PA of 6 um loses 10 %: 0.6 of 60 um, and of 10 percentage points of share 1. */
  @Test
  void oneLayerThatLosesATenthIsNamedWithItsShareAndTheTotal() {
    FilmHistory history =
        history(ProofFilms.lidding(), (t, now, chance) -> now.split[2] = t >= FROM ? 0.9 : 1);
    Diagnosis diagnosis = engine.diagnose(history);
    Candidate best = diagnosis.shown().get(0);
    assertThat(best.signature().code()).isEqualTo("one-layer-step");
    assertThat(best.positions()).containsExactly(3);
    LayerMove move = diagnosis.changed().get(0).moves().get(2);
    assertThat(move.percent()).isBetween(-12.0, -8.0);
    assertThat(move.sharePoints()).isBetween(-1.15, -0.7);
    assertThat(move.isClear()).isTrue();
    assertThat(diagnosis.changed().get(0).words()).startsWith("Outer PA stepped by");
  }

  @Test
  void aBoltThatLetsGoIsFoundInItsLane() {
    FilmHistory history =
        history(
            ProofFilms.shrink(),
            (t, now, chance) -> {
              for (int j = 0; t >= FROM && j < 5; j++) {
                now.lip[j] = j == 3 ? 0.95 : 1.0125;
              }
            });
    Candidate best = engine.diagnose(history).shown().get(0);
    assertThat(best.signature().code()).isEqualTo("profile-of-all-layers");
    assertThat(best.lanes()).containsExactly(4);
    assertThat(best.since().orElseThrow().at()).isEqualTo(MassBalanceLine.at(PACE, FROM));
  }

  @Test
  void whereNothingHappensNothingIsNamed() {
    Diagnosis diagnosis = engine.diagnose(history(ProofFilms.pouch(), (t, now, chance) -> {}));
    assertThat(diagnosis.changed()).isEmpty();
    assertThat(diagnosis.candidates()).isEmpty();
    assertThat(diagnosis.ambiguous()).isEmpty();
  }

  @Test
  void withTooFewSamplesBeforeTheAlarmItSaysSo() {
    FilmHistory whole = history(ProofFilms.pouch(), (t, now, chance) -> {});
    List<Sample> few = whole.samples().subList(0, 12);
    Diagnosis diagnosis = engine.diagnose(FilmHistory.of(whole.structure(), few, last(few)));
    assertThat(diagnosis.candidates()).isEmpty();
    assertThat(diagnosis.notes()).singleElement().asString().contains("too few samples");
    assertThat(engine.diagnose(FilmHistory.of(whole.structure(), List.of(), last(few))).notes())
        .hasSize(1);
  }

  @Test
  void flaggedSamplesAreNoEvidenceAboutTheProcessButAboutTheGauge() {
    FilmHistory odd =
        history(
            ProofFilms.pouch(),
            (t, now, chance) -> now.speed = t >= FROM && t < FROM + 4 ? 1.2 : 1);
    List<GaugeFlag> flags = new ArrayList<>();
    for (Sample sample : odd.samples().subList(FROM, FROM + 4)) {
      flags.add(new GaugeFlag(sample.key(), GaugeFlag.MISSED_BOUNDARY, List.of(2)));
    }
    FilmHistory flagged =
        new FilmHistory(
            odd.structure(),
            odd.samples(),
            MassBalanceLine.at(PACE, FROM + 5),
            List.of(),
            List.of(),
            flags);
    Diagnosis diagnosis = engine.diagnose(flagged);
    assertThat(diagnosis.candidates())
        .extracting(candidate -> candidate.signature().code())
        .containsExactly("boundary-missed");
    assertThat(diagnosis.candidates().get(0).positions()).containsExactly(2);
  }

  @Test
  void anEngineersOwnSignatureIsFound() {
    Signature own =
        new Signature(
            "winder-two",
            "The second winder runs fast",
            Signature.Kind.PROCESS,
            List.of(
                new Condition(Statistic.COMMON_EXPLAINED, Comparison.AT_LEAST, 0.8, 1, Role.NEEDED),
                new Condition(Statistic.MOVED_PERCENT, Comparison.AT_MOST, -2, 1, Role.NEEDED)),
            List.of(new Suspect("haul-off-speed", "winder 2")),
            List.of("Look at winder 2"),
            "The speed of winder 2.");
    Diagnosis diagnosis =
        new DiagnosisEngine(new Signatures(List.of(own)))
            .diagnose(history(ProofFilms.lidding(), DiagnosisEngineTest::faster));
    assertThat(diagnosis.candidates()).hasSize(1);
    Candidate found = diagnosis.candidates().get(0);
    assertThat(found.score()).isEqualTo(1);
    assertThat(found.evidence()).hasSize(2);
    assertThat(found.evidence().get(0).words())
        .contains("explained by all layers moving by the same percentage")
        .endsWith("(needed: at least 80 %).");
  }

  @Test
  void aStepWhereALotWasChangedIsToldFromOneThatWasNot() {
    FilmHistory step =
        history(
            ProofFilms.pouch(), (t, now, chance) -> now.output.put("C", t >= FROM ? 1.06 : 1.0));
    Boundary lot =
        new Boundary(Boundary.Kind.RESIN_LOT, MassBalanceLine.at(PACE, FROM), List.of(2), "lot 7");
    Boundary elsewhere =
        new Boundary(Boundary.Kind.RESIN_LOT, MassBalanceLine.at(PACE, FROM), List.of(1), "lot 8");
    assertThat(first(step.withBoundaries(List.of(lot)))).isEqualTo("step-at-resin-lot");
    assertThat(first(step.withBoundaries(List.of(elsewhere)))).isEqualTo("one-layer-step");
    assertThat(engine.diagnose(step.withBoundaries(List.of(lot))).changed().get(0).boundaries())
        .contains(lot);
  }

  private String first(FilmHistory history) {
    return engine.diagnose(history).shown().get(0).signature().code();
  }

  /** The causes that the stories of the sample runs tell of. */
  @Test
  void theSampleRunsAreDiagnosedAsTheirStoriesTell() {
    assertThat(firstOf("pouch-haul-off-step", 100)).isEqualTo("all-layers-together");
    assertThat(firstOf("lidding-tie-thinning", 130)).isEqualTo("slow-decline");
    assertThat(firstOf("nine-layer-lane-off", 110)).isEqualTo("profile-of-all-layers");
    assertThat(firstOf("shrink-in-control", 160)).isEqualTo("-");
  }

  private String firstOf(String folder, int samples) {
    SampleRun run =
        SampleRuns.all().stream()
            .filter(one -> one.folder().equals(folder))
            .findFirst()
            .orElseThrow();
    List<Sample> seen = run.samples().subList(0, samples);
    return engine.diagnose(FilmHistory.of(run.structure(), seen, last(seen))).shown().stream()
        .map(candidate -> candidate.signature().code())
        .findFirst()
        .orElse("-");
  }

  /** 3 of 60 um lie at the usual mean of the reference, which is 5 % thinner than the film is. */
  @Test
  void aReferenceIsWhatPercentagesAreOf() {
    FilmHistory history = history(ProofFilms.lidding(), DiagnosisEngineTest::faster);
    List<LayerReference> twice = new ArrayList<>();
    double[] targets = {14, 3, 6, 4, 6, 3, 24};
    for (int i = 0; i < targets.length; i++) {
      twice.add(new LayerReference(i + 1, 2 * targets[i], 0.1, List.of()));
    }
    LayerMove plain = engine.diagnose(history).changed().get(0).moves().get(7);
    LayerMove halved =
        engine.diagnose(history.withReference(twice)).changed().get(0).moves().get(7);
    assertThat(halved.um()).isCloseTo(plain.um(), withPercentage(5));
    assertThat(halved.percent() * 2).isCloseTo(plain.percent(), withPercentage(5));
  }

  /** A gauge on hold. */
  @Test
  void readingsThatNeverChangeAreTheGauges() {
    FilmHistory whole = history(ProofFilms.shrink(), (t, now, chance) -> {});
    List<Sample> stuck = new ArrayList<>();
    for (Sample sample : whole.samples()) {
      stuck.add(with(sample, new int[] {1, 2, 3}, (i, j) -> 18 + i + j));
    }
    Diagnosis diagnosis = engine.diagnose(FilmHistory.of(whole.structure(), stuck, last(stuck)));
    assertThat(diagnosis.candidates())
        .extracting(candidate -> candidate.signature().code())
        .containsExactly("stuck-values");
  }

  @Test
  void aSampleReadFromItsInnerSideIsSaidToBeTurnedOver() {
    FilmHistory whole = history(ProofFilms.lidding(), (t, now, chance) -> {});
    List<Sample> samples = new ArrayList<>(whole.samples());
    Sample right = samples.get(FROM);
    samples.set(
        FROM,
        with(
            right,
            IntStream.rangeClosed(1, 10).toArray(),
            (i, j) -> new double[] {24, 3, 6, 4, 6, 3, 14}[i] + j / 100.0));
    Diagnosis diagnosis =
        engine.diagnose(FilmHistory.of(whole.structure(), samples, MassBalanceLine.at(PACE, FROM)));
    assertThat(diagnosis.shown().get(0).signature().code()).isEqualTo("upside-down");
  }

  /** Whatever comes: lanes that come and go, one lane, no reading at all, all at one time. */
  @Test
  void oddSamplesAreNoReasonToFail() {
    Random random = new Random(11);
    for (int round = 0; round < 200; round++) {
      Film film = round % 2 == 0 ? ProofFilms.pouch() : ProofFilms.shrink();
      List<Sample> odd = new ArrayList<>();
      int lanes = 1 + random.nextInt(5);
      double missing = random.nextInt(4) / 3.0;
      double spread = random.nextInt(3);
      for (int t = 0; t < 60; t++) {
        int first = random.nextInt(1 + round % 3);
        int[] numbers = IntStream.range(first, first + lanes).toArray();
        Sample blank =
            new Sample(
                new SampleKey("L", "S", "R", "S" + t),
                Instant.EPOCH.plusSeconds(round % 5 == 0 ? 0 : 900L * t),
                numbers,
                new double[3][lanes]);
        odd.add(
            with(
                blank,
                numbers,
                (i, j) ->
                    random.nextDouble() < missing
                        ? Double.NaN
                        : Math.max(0, 20 + spread * random.nextGaussian())));
      }
      assertHoldsTogether(engine.diagnose(FilmHistory.of(film.structure(), odd, last(odd))), odd);
    }
  }

  /** Whatever was read: what is named is of this film, of this window, and best first. */
  private static void assertHoldsTogether(Diagnosis diagnosis, List<Sample> window) {
    List<Instant> times = window.stream().map(Sample::takenAt).toList();
    for (Candidate one : diagnosis.candidates()) {
      assertThat(one.positions()).allMatch(position -> position >= 1 && position <= 3);
      assertThat(one.lanes()).allMatch(lane -> window.stream().anyMatch(s -> hasLane(s, lane)));
      assertThat(one.since().map(Since::at).map(times::contains).orElse(true)).isTrue();
      assertThat(one.evidence()).isNotEmpty();
    }
    assertThat(diagnosis.candidates())
        .extracting(Candidate::score)
        .isSortedAccordingTo(Comparator.reverseOrder());
  }

  private static boolean hasLane(Sample sample, int number) {
    return IntStream.range(0, sample.laneCount()).anyMatch(i -> sample.lane(i) == number);
  }

  private interface Um {
    double at(int layer, int lane);
  }

  private static Sample with(Sample sample, int[] lanes, Um um) {
    double[][] read = new double[sample.layers()][lanes.length];
    for (int i = 0; i < read.length; i++) {
      for (int j = 0; j < lanes.length; j++) {
        read[i][j] = um.at(i, j);
      }
    }
    return new Sample(sample.key(), sample.takenAt(), lanes, read);
  }
}
