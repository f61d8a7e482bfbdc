package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class GiveawayOfStatementTest {
  private static final Stability STABLE = new Stability(40, 0, 0.01);

  /** Lane 1 about 20, lane 2 about 19, each by turns 0.1 above and below: the second one limits. */
  private static CapabilityStatement statement(SpecLimits average) {
    CapabilityTally tally = CapabilityTally.ofMoments();
    for (int i = 0; i < 40; i++) {
      double off = i % 2 == 0 ? 0.1 : -0.1;
      tally.add(new int[] {1, 2}, new double[] {20 + off, 19 + off});
    }
    SpecLimits individual = SpecLimits.of(16, 20, 24);
    return CapabilityStatement.of(tally, CapabilityQuestion.of(average, individual), STABLE)
        .orElseThrow();
  }

  /**
   * Points: mean 19.5, sigma sqrt(0.26 * 80 / 79), room 3.5 - 3.99 sigma = 1.4526; lane 2: 3 - 3.99
   * * 0.1 sqrt(40 / 39) = 2.596. The points leave less.
   */
  @Test
  void theAnswerThatLeavesLeastDecides() {
    Giveaway giveaway = Giveaway.of(statement(SpecLimits.NONE)).orElseThrow();
    double sigma = Math.sqrt(0.26 * 80 / 79);
    assertThat(giveaway.achievableUm().orElseThrow())
        .isCloseTo(3.5 - 3 * 1.33 * sigma, within(1e-9));
    assertThat(giveaway.nominalUm()).isEmpty();
  }

  /** The contract asks for a mean of 19.2, three tenths below the mean. */
  @Test
  void nobodyGoesBelowTheLeastMeanOfTheContract() {
    SpecLimits contract =
        new SpecLimits(OptionalDouble.of(19.2), OptionalDouble.empty(), OptionalDouble.empty());
    Giveaway giveaway = Giveaway.of(statement(contract)).orElseThrow();
    double ofAverages = 0.3 - 3 * 1.33 * 0.1 * Math.sqrt(40 / 39.0);
    assertThat(giveaway.nominalUm().orElseThrow()).isCloseTo(0.3, within(1e-9));
    assertThat(giveaway.achievableUm().orElseThrow()).isCloseTo(ofAverages, within(1e-9));
    assertThat(giveaway.words()).contains("Risk, not saving");
  }
}
