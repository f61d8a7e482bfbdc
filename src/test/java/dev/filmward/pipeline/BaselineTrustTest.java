package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.drift.LimitsTrust;
import dev.filmward.pipeline.LimitsProposal.Proposed;
import dev.filmward.store.LimitsTable.VersionKey;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits from samples that are alike are not frozen silently. */
class BaselineTrustTest {
  private static final Instant START = Instant.parse("2026-11-18T06:00:00Z");
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final VersionKey FIRST = new VersionKey("Blown 1", "ONE", 1);
  private static final int SAMPLES = 150;

  @TempDir private Path folder;
  private TestPlant plant;

  @BeforeEach
  void learn() throws Exception {
    plant = new TestPlant(folder, NOW);
    String yaml =
        "structures:\n  - code: ONE\n    name: One layer\n    layers:\n      - name: Core\n"
            + "        role: core\n        target: 20 um\n        lower: 10 um\n";
    plant.plant().learnStructures("structures.yaml", yaml.getBytes(StandardCharsets.UTF_8));
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void tellsHowAlikeNeighboursAreAndWhatThatDoes() {
    read(0.8);
    Proposed core = propose();
    BaselineTrust trust = core.trust().orElseThrow();
    // chance alone moves the estimate by about 2 sqrt((1 - 0.64) / 150)
    assertThat(trust.neighbours().lag1()).isCloseTo(0.8, within(0.15));
    assertThat(trust.isStrong()).isTrue();
    assertThat(core.warnings())
        .anyMatch(words -> words.contains("are alike") && words.contains("of 1000"));
    assertThat(trust.residuals()).hasSize(SAMPLES);
    assertThat(trust.residuals().get(0)).isEmpty();
    assertThat(trust.beyond()).hasSizeLessThan(4);
  }

  @Test
  void saysNothingWhereNeighboursAreNotAlike() {
    read(0);
    assertThat(propose().trust().orElseThrow().isStrong()).isFalse();
    assertThat(propose().warnings()).noneMatch(words -> words.contains("alike"));
    freeze(choice());
  }

  @Test
  void freezesThemOnlyWhereSomebodySaysWhatIsDoneAboutIt() {
    read(0.8);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> freeze(choice()))
        .withMessageContaining("much alike")
        .withMessageContaining("sample-less-often, without-runs, residuals, accept");
    freeze(choice().with(AutocorrelationRemedy.SAMPLE_LESS_OFTEN));
    assertThat(kept()).contains("sample-less-often");
  }

  @Test
  void provisionalLimitsAskForItWhenTheyAreFrozen() {
    read(0.8);
    plant.plant().putInForce("Blown 1", "ONE", choice(), change(LimitsState.PROVISIONAL));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant.plant().moveLimits(FIRST, change(LimitsState.FROZEN)))
        .withMessageContaining("much alike");
    plant
        .plant()
        .moveLimits(
            FIRST, change(LimitsState.FROZEN), Optional.of(AutocorrelationRemedy.WITHOUT_RUNS));
    assertThat(kept()).contains("without-runs");
  }

  /** Twice the normal tail beyond 3, 2 and 1 standard deviations, from printed tables. */
  @ParameterizedTest
  @CsvSource({"0.5, 2.70", "1, 2.70", "1.5, 45.50", "3, 317.31"})
  void countsMeansBeyondLimitsThatAreTooNarrow(double spreadFactor, double per1000) {
    LimitsTrust neighbours = new LimitsTrust(LimitsTrust.Verdict.TOO_NARROW, 0.6, 0.1);
    BaselineTrust trust = new BaselineTrust(neighbours, 7, spreadFactor, List.of(), List.of());
    assertThat(trust.falseAlarmsPer1000()).isCloseTo(per1000, within(0.005));
  }

  private static BaselineChoice choice() {
    return BaselineChoice.first(SAMPLES);
  }

  private Proposed propose() {
    return plant.plant().proposeLimits("Blown 1", "ONE", choice()).characteristics().get(0);
  }

  private void freeze(BaselineChoice choice) {
    plant.plant().putInForce("Blown 1", "ONE", choice, change(LimitsState.FROZEN));
  }

  private Optional<String> kept() {
    return plant.plant().store().read(tables -> tables.limits().remedy(FIRST));
  }

  private static StateChange change(LimitsState state) {
    return new StateChange(state, new Decision("Kim", "looked at it", NOW));
  }

  /** Means of standard deviation 0.3 that each keep so much of the one before. */
  private void read(double kept) {
    Random random = new Random(20261118);
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer,thickness_um\n");
    double level = random.nextGaussian();
    for (int i = 0; i < SAMPLES; i++) {
      level = kept * level + Math.sqrt(1 - kept * kept) * random.nextGaussian();
      for (int lane = 0; lane < 4; lane++) {
        csv.append(
            String.format(
                Locale.ROOT,
                "%s,Blown 1,ONE,R1,S%03d,%d,1,%.4f%n",
                START.plusSeconds(60L * i),
                i,
                lane,
                20 + 0.3 * level + (lane - 1.5) / 3));
      }
    }
    plant.read("readings.csv", csv.toString());
  }
}
