package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.diagnosis.Proof.Run;
import dev.filmward.diagnosis.Proof.Score;
import dev.filmward.diagnosis.ProofCases.Case;
import dev.filmward.diagnosis.ProofCases.Start;
import dev.filmward.diagnosis.ProofCases.Strength;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Proves the diagnosis on simulated film that was made by mass balance. Signatures and thresholds
 * were tuned with seeds below 10 000; the seeds here are others. With -Dfilmward.proof=true the
 * table of all strengths for DEVELOPERS.md is printed.
 */
class DiagnosisProofTest {
  private static final long SEED = 17_000_000;
  private static final long QUIET_SEED = 19_000_000;
  private static final int RUNS = 50;
  private static final int WEEKS = 200;

  private static final Proof PROOF = new Proof();
  private static final Map<Case, Score> MIDDLE = new LinkedHashMap<>();

  @BeforeAll
  static void run() {
    for (Case is : ProofCases.all()) {
      MIDDLE.put(is, PROOF.score(is, Strength.MIDDLE, RUNS, SEED));
    }
  }

  static List<Case> cases() {
    return ProofCases.all().stream().filter(is -> !isAmbiguous(is)).toList();
  }

  static List<Case> ambiguousCases() {
    return ProofCases.all().stream().filter(DiagnosisProofTest::isAmbiguous).toList();
  }

  /** Two causes that leave the same thickness: velocity times density is alike in both layers. */
  private static boolean isAmbiguous(Case is) {
    return is.domain().equals("P4=P5");
  }

  @Test
  void thereAreEnoughCauses() {
    assertThat(cases().stream().filter(is -> is.domain().startsWith("P")).map(Case::code))
        .contains(
            "all-layers-together",
            "one-layer-step",
            "one-extruder-step",
            "mass-traded",
            "slow-decline",
            "step-at-resin-lot",
            "short-dropout",
            "one-layer-swings",
            "profile-of-all-layers",
            "profile-of-one-layer",
            "edge-against-centre",
            "layer-scatters",
            "core-since-start",
            "skins-opposed");
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theTrueCauseComesFirstInNineOfTen(Case is) {
    assertThat(MIDDLE.get(is).first()).as(is.name()).isGreaterThanOrEqualTo(0.9);
  }

  @ParameterizedTest
  @MethodSource("ambiguousCases")
  void whereTwoCausesLeaveTheSameThicknessBothAreShownAndCalledAmbiguous(Case is) {
    assertThat(MIDDLE.get(is).runs())
        .filteredOn(run -> run.ambiguous() && run.rank() >= 1 && run.rank() <= 3)
        .hasSizeGreaterThanOrEqualTo(RUNS * 9 / 10);
  }

  @Test
  void theBeginningIsRightWithinTwoSamplesInFourOfFive() {
    List<Run> asked = new ArrayList<>();
    MIDDLE.forEach(
        (is, score) -> {
          if (is.setting().start() == Start.ASKED) {
            asked.addAll(score.runs());
          }
        });
    assertThat(new Score(asked).startNear()).isGreaterThanOrEqualTo(0.8);
  }

  @Test
  void inQuietWeeksACauseIsNamedInAtMostTwoOfAHundred() {
    List<Optional<String>> weeks = PROOF.quietWeeks(WEEKS, QUIET_SEED);
    assertThat(weeks).filteredOn(Optional::isPresent).hasSizeLessThanOrEqualTo(WEEKS * 2 / 100);
  }

  @AfterAll
  static void printTheTableWhenAsked() {
    if (!Boolean.getBoolean("filmward.proof")) {
      return;
    }
    System.out.println("| | cause | must come first | strength | first | shown | start | named |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    MIDDLE.forEach(
        (is, middle) -> {
          print(is, Strength.WEAK, PROOF.score(is, Strength.WEAK, RUNS, SEED + 100_000));
          print(is, Strength.MIDDLE, middle);
          print(is, Strength.STRONG, PROOF.score(is, Strength.STRONG, RUNS, SEED + 200_000));
        });
    List<Optional<String>> weeks = PROOF.quietWeeks(WEEKS, QUIET_SEED);
    System.out.println(
        "quiet weeks with a cause: "
            + weeks.stream().flatMap(Optional::stream).toList()
            + " of "
            + WEEKS);
  }

  private static void print(Case is, Strength strength, Score score) {
    boolean isFirst = strength == Strength.WEAK;
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s | %s %s | %.0f | %.0f | %s | %d |%n",
        isFirst ? is.domain() : "",
        isFirst ? is.name() : "",
        isFirst ? "`" + is.code() + "`" : "",
        Numbers.of(is.strength(strength)),
        is.unit(),
        100 * score.first(),
        100 * score.shown(),
        is.setting().start() == Start.ASKED
            ? String.format(Locale.ROOT, "%.0f", 100 * score.startNear())
            : "-",
        score.medianNamed());
  }
}
