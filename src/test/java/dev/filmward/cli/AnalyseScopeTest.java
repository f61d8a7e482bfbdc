package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.pipeline.BaselineChoice;
import java.time.Instant;
import java.time.ZoneId;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

/** How the options that say what an analysis looks at are read. */
class AnalyseScopeTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @Test
  void aWeekBeginsOnMondayMidnightInThePlantsZone() {
    // ISO 8601: week 1 of 2026 has the first Thursday, 1 January; week 47 begins on 16 November
    Predicate<Instant> week = new WeekOption().convert("2026-W47").in(BERLIN);
    assertThat(week.test(Instant.parse("2026-11-15T22:59:59Z"))).isFalse();
    assertThat(week.test(Instant.parse("2026-11-15T23:00:00Z"))).isTrue();
    assertThat(week.test(Instant.parse("2026-11-22T22:59:59Z"))).isTrue();
    assertThat(week.test(Instant.parse("2026-11-22T23:00:00Z"))).isFalse();
  }

  @Test
  void theWeekOfTheClockChangeHas169Hours() {
    // summer time ends in Berlin on 25 October 2026
    Predicate<Instant> week = new WeekOption().convert("2026-W43").in(BERLIN);
    Instant start = Instant.parse("2026-10-18T22:00:00Z");
    assertThat(week.test(start)).isTrue();
    assertThat(week.test(start.plusSeconds(169 * 3600L - 1))).isTrue();
    assertThat(week.test(start.plusSeconds(169 * 3600L))).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "47", "2026-47", "2026-W54", "2026-W00", "W47"})
  void noWeekIsRefusedWithTheExpectedForm(String text) {
    assertThatThrownBy(() -> new WeekOption().convert(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageContaining("2026-W47");
  }

  @Test
  void aBaselineIsCountedOrBetweenTwoTimes() {
    BaselineOption option = new BaselineOption();
    assertThat(option.convert("first:25")).isEqualTo(BaselineChoice.first(25));
    assertThat(option.convert("last:7")).isEqualTo(BaselineChoice.last(7));
    assertThat(option.convert("2026-11-18T06:00:00+01:00..2026-11-18T18:00:00+01:00"))
        .isEqualTo(
            BaselineChoice.between(
                Instant.parse("2026-11-18T05:00:00Z"), Instant.parse("2026-11-18T17:00:00Z")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "25",
        "first",
        "first:0",
        "first:-1",
        "middle:25",
        "2026-11-18..2026-11-19",
        "2026-11-18T18:00:00+01:00..2026-11-18T06:00:00+01:00"
      })
  void noBaselineIsRefusedWithTheExpectedForm(String text) {
    assertThatThrownBy(() -> new BaselineOption().convert(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageContaining("first:25");
  }

  @Test
  void testsAndChartsThatAreNoneAreRefusedWithTheChoices() {
    assertThat(new TestOption().convert("trend").word()).isEqualTo("trend");
    assertThatThrownBy(() -> new TestOption().convert("trends"))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageContaining("alternation");
    assertThat(new ChartOption().convert("ewma").word()).isEqualTo("ewma");
    assertThatThrownBy(() -> new ChartOption().convert("pie"))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageContaining("cusum");
  }
}
