package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The table of severity against time to consequence (common practice, no source). */
class StakesTest {
  @ParameterizedTest(name = "out of spec {0}, critical {1}, in {2} min: {4}")
  @CsvSource({
    "true,  true,     , LOW,    HIGH",
    "true,  false,    , LOW,    MEDIUM",
    "false, true,    0, LOW,    HIGH",
    "false, true,   60, LOW,    HIGH",
    "false, false,  60, LOW,    MEDIUM",
    "false, true,   61, LOW,    MEDIUM",
    "false, true,  480, LOW,    MEDIUM",
    "false, false, 480, LOW,    LOW",
    "false, true,  481, LOW,    LOW",
    "false, true,     , LOW,    LOW",
    "false, false,    , MEDIUM, MEDIUM",
    "true,  true,     , MEDIUM, HIGH"
  })
  void priorityComesFromSeverityAndTimeToConsequence(
      boolean outOfSpec, boolean critical, Integer minutes, Priority atLeast, Priority priority) {
    Optional<Duration> left = Optional.ofNullable(minutes).map(Duration::ofMinutes);
    assertThat(new Stakes(outOfSpec, critical, left).priority(atLeast)).isEqualTo(priority);
  }
}
