package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class StabilityTest {

  /** Poisson of mean 1: 5 or more with probability 0.00366, 4 or more with 0.01899 (tables). */
  @Test
  void asManySignalsAsChanceMakesInNinetyNineOfAHundredWeeksAreStable() {
    assertThat(new Stability(100, 4, 0.01).isStable()).isTrue();
    assertThat(new Stability(100, 5, 0.01).isStable()).isFalse();
  }

  @Test
  void noSignalIsStableAndNoSampleIsNot() {
    assertThat(Stability.ofZoneTests(10, 0).isStable()).isTrue();
    assertThat(Stability.ofZoneTests(0, 0).isStable()).isFalse();
    assertThat(Stability.ofZoneTests(0, 0).words()).contains("only performance");
  }

  @Test
  void theSentenceSaysWhatTheGateMeans() {
    assertThat(Stability.ofZoneTests(168, 31).words())
        .isEqualTo(
            "The process is not stable: 31 of 168 samples signalled. There is no capability, only"
                + " performance: Pp and Ppk say what was made, not what the line can do.");
    assertThat(Stability.ofZoneTests(168, 2).words()).startsWith("The process is stable: 2 of 168");
  }

  @Test
  void moreSignalsThanSamplesAreRefused() {
    assertThatThrownBy(() -> Stability.ofZoneTests(3, 4)).hasMessageContaining("4 signals");
    assertThatThrownBy(() -> new Stability(3, 1, 0)).hasMessageContaining("share");
  }
}
