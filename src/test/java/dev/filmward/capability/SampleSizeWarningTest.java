package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SampleSizeWarningTest {

  @Test
  void belowFiftyAreTooFewAndBelowAHundredAndTwentyFiveIndicate() {
    assertThat(SampleSizeWarning.of(0)).hasValue(SampleSizeWarning.TOO_FEW);
    assertThat(SampleSizeWarning.of(49)).hasValue(SampleSizeWarning.TOO_FEW);
    assertThat(SampleSizeWarning.of(50)).hasValue(SampleSizeWarning.INDICATIVE);
    assertThat(SampleSizeWarning.of(124)).hasValue(SampleSizeWarning.INDICATIVE);
    assertThat(SampleSizeWarning.of(125)).isEmpty();
  }

  @Test
  void theWordsSayWhatWouldBeEnough() {
    assertThat(SampleSizeWarning.TOO_FEW.words()).contains("50 readings");
    assertThat(SampleSizeWarning.INDICATIVE.words()).contains("125 readings");
  }
}
