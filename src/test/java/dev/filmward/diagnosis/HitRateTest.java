package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.diagnosis.NamedCause.Named;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How often the true cause was named, counted by hand. */
class HitRateTest {
  private static final Named FEEDER = new Named("one-layer", List.of("feeder-hopper"));
  private static final Named SPEED =
      new Named("all-layers", List.of("haul-off-speed", "layflat-width"));
  private static final Named LOT = new Named("resin", List.of("resin-lot"));
  private static final Named DIE = new Named("lanes", List.of("die-air-ring"));

  @Test
  void theRankIsThePlaceOfTheFirstThatPointsToTheCause() {
    assertThat(outcome("layflat-width", SPEED, FEEDER).rank()).isEqualTo(1);
    assertThat(outcome("feeder-hopper", SPEED, FEEDER).rank()).isEqualTo(2);
    assertThat(outcome("resin-lot", SPEED, FEEDER).rank()).isZero();
    assertThat(outcome("resin-lot").rank()).isZero();
  }

  @Test
  void countsFirstShownAndSilent() {
    HitRate rate =
        HitRate.of(
            List.of(
                outcome("feeder-hopper", FEEDER),
                outcome("feeder-hopper", SPEED, LOT, FEEDER),
                outcome("feeder-hopper", SPEED, LOT, DIE, FEEDER),
                outcome("resin-lot")));

    assertThat(rate.all()).isEqualTo(new HitRate.Count(4, 1, 2, 1));
    assertThat(rate.byCause())
        .containsEntry("feeder-hopper", new HitRate.Count(3, 1, 2, 0))
        .containsEntry("resin-lot", new HitRate.Count(1, 0, 0, 1));
  }

  @Test
  void whatWasNotFoundSaysNothing() {
    HitRate rate =
        HitRate.of(
            List.of(
                outcome(Causes.OTHER, FEEDER),
                outcome(Causes.NOT_FOUND_YET, FEEDER),
                outcome(Causes.NO_CAUSE_FOUND, FEEDER)));

    assertThat(rate.all().alarms()).isZero();
    assertThat(rate.byCause()).isEmpty();
  }

  private static NamedCause outcome(String cause, Named... named) {
    return new NamedCause(cause, List.of(named));
  }
}
