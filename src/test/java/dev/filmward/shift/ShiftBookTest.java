package dev.filmward.shift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Instants are written out in UTC; Berlin is an hour ahead in winter and two in summer. */
class ShiftBookTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final ShiftBook USUAL = new ShiftBook(List.of(), BERLIN);

  @Test
  void aShiftThatCrossesMidnightBelongsToTheDayOnWhichItBegins() {
    Shift night = USUAL.at(Instant.parse("2026-11-26T03:00:00Z"));
    assertThat(night.word()).isEqualTo("2026-11-25 Night");
    assertThat(night.from()).isEqualTo("2026-11-25T21:00:00Z");
    assertThat(night.to()).isEqualTo("2026-11-26T05:00:00Z");
    assertThat(night.length()).isEqualTo(Duration.ofHours(8));
  }

  @Test
  void theBeginningBelongsToTheShiftAndTheEndToTheNext() {
    Instant six = Instant.parse("2026-11-25T05:00:00Z");
    assertThat(USUAL.at(six).word()).isEqualTo("2026-11-25 Early");
    assertThat(USUAL.at(six.minusNanos(1)).word()).isEqualTo("2026-11-24 Night");
    assertThat(USUAL.before(USUAL.at(six)).word()).isEqualTo("2026-11-24 Night");
    assertThat(USUAL.after(USUAL.at(six)).word()).isEqualTo("2026-11-25 Late");
  }

  /** 29 March 2026: at 01:00 UTC clocks go from 02:00 to 03:00. */
  @Test
  void theNightInWhichClocksGoForwardHasSevenHours() {
    Shift night = USUAL.find("2026-03-28 Night").orElseThrow();
    assertThat(night.from()).isEqualTo("2026-03-28T21:00:00Z");
    assertThat(night.to()).isEqualTo("2026-03-29T04:00:00Z");
    assertThat(night.length()).isEqualTo(Duration.ofHours(7));
    assertThat(lengthOfDay("2026-03-29")).isEqualTo(Duration.ofHours(24));
    assertThat(lengthOfDay("2026-03-28")).isEqualTo(Duration.ofHours(23));
  }

  /** 25 October 2026: at 01:00 UTC clocks go from 03:00 back to 02:00. */
  @Test
  void theNightInWhichClocksGoBackHasNineHours() {
    Shift night = USUAL.find("2026-10-24 Night").orElseThrow();
    assertThat(night.from()).isEqualTo("2026-10-24T20:00:00Z");
    assertThat(night.to()).isEqualTo("2026-10-25T05:00:00Z");
    assertThat(night.length()).isEqualTo(Duration.ofHours(9));
    assertThat(lengthOfDay("2026-10-24")).isEqualTo(Duration.ofHours(25));
    // both times when the clock shows 02:30 are of that night
    assertThat(USUAL.at(Instant.parse("2026-10-25T00:30:00Z"))).isEqualTo(night);
    assertThat(USUAL.at(Instant.parse("2026-10-25T01:30:00Z"))).isEqualTo(night);
  }

  @Test
  void aBeginningThatClocksSkipIsMovedOnAndOneThatComesTwiceIsTheEarlier() {
    ShiftBook half = book(pattern("A", "02:30"), pattern("B", "14:30"));
    assertThat(half.find("2026-03-29 A").orElseThrow().from()).isEqualTo("2026-03-29T01:30:00Z");
    assertThat(half.find("2026-10-25 A").orElseThrow().from()).isEqualTo("2026-10-25T00:30:00Z");
  }

  @Test
  void ofTwoBeginningsThatFallTogetherWhereClocksSkipTheLaterShiftIsLeft() {
    ShiftBook close = book(pattern("A", "02:00"), pattern("B", "03:00"));
    assertThat(close.find("2026-03-29 A")).isEmpty();
    assertThat(close.at(Instant.parse("2026-03-29T01:00:00Z")).word()).isEqualTo("2026-03-29 B");
    assertThat(close.find("2026-03-30 A")).isPresent();
  }

  @Test
  void weekdaysMayHaveShiftsOfTheirOwn() {
    Set<DayOfWeek> week = EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY);
    Set<DayOfWeek> end = EnumSet.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
    ShiftBook book =
        book(
            new ShiftPattern("Early", LocalTime.of(6, 0), week, List.of()),
            new ShiftPattern("Late", LocalTime.of(14, 0), week, List.of()),
            new ShiftPattern("Day", LocalTime.of(7, 0), end, List.of()));
    // 28 November 2026 is a Saturday
    Shift friday = book.find("2026-11-27 Late").orElseThrow();
    assertThat(friday.to()).isEqualTo("2026-11-28T06:00:00Z");
    Shift sunday = book.find("2026-11-29 Day").orElseThrow();
    assertThat(sunday.to()).isEqualTo("2026-11-30T05:00:00Z");
    assertThat(book.find("2026-11-28 Early")).isEmpty();
  }

  @Test
  void crewsTakeAShiftInTurnFromTheDayOnWhichTheCalendarHolds() {
    ShiftPattern early =
        new ShiftPattern(
            "Early", LocalTime.of(6, 0), Set.of(DayOfWeek.values()), List.of("A", "A", "B", "C"));
    ShiftBook book = book(early, pattern("Late", "18:00"));
    List<Optional<String>> crews =
        book
            .within(Instant.parse("2026-01-01T04:00:00Z"), Instant.parse("2026-01-06T04:00:00Z"))
            .stream()
            .filter(shift -> shift.name().equals("Early"))
            .map(Shift::crew)
            .toList();
    assertThat(crews.stream().map(Optional::orElseThrow)).containsExactly("A", "A", "B", "C", "A");
    assertThat(book.find("2026-01-01 Late").orElseThrow().crew()).isEmpty();
  }

  @Test
  void aNewCalendarTakesOverWithItsFirstShiftAndWhatWasStays() {
    CalendarVersion two =
        version(1, "2026-11-25", List.of(pattern("Day", "07:00"), pattern("Dark", "19:00")));
    ShiftBook book = new ShiftBook(List.of(two), BERLIN);
    Shift last = book.find("2026-11-24 Night").orElseThrow();
    assertThat(last.to()).isEqualTo("2026-11-25T06:00:00Z");
    assertThat(book.after(last).word()).isEqualTo("2026-11-25 Day");
    assertThat(book.find("2026-11-25 Early")).isEmpty();
  }

  @Test
  void everyMomentOfManyYearsBelongsToExactlyOneShift() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    ShiftBook book = new ShiftBook(randomVersions(random), ZoneId.of("America/Santiago"));
    Instant from = Instant.parse("2024-01-01T00:00:00Z");
    for (int i = 0; i < 2000; i++) {
      Instant moment = from.plusSeconds(random.nextInt(5 * 365 * 86_400));
      Shift shift = book.at(moment);
      assertThat(shift.contains(moment)).as("seed %d, %s", seed, moment).isTrue();
      assertThat(book.before(shift).to()).as("seed %d, %s", seed, moment).isEqualTo(shift.from());
      assertThat(book.after(shift).from()).as("seed %d, %s", seed, moment).isEqualTo(shift.to());
      assertThat(book.find(shift.word())).contains(shift);
    }
  }

  @Test
  void aCalendarThatCannotBeIsRefusedWithWhatIsWrong() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> book(pattern("Early", "06:00"), pattern("Early", "14:00")))
        .withMessageContaining("Early");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ShiftCalendar(List.of(), 1))
        .withMessageContaining("1 to 24 shifts");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> USUAL.find("Early"))
        .withMessageContaining("2026-11-25 Early");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> USUAL.find("2026-13-25 Early"))
        .withMessageContaining("2026-13-25");
  }

  private static Duration lengthOfDay(String day) {
    return List.of("Early", "Late", "Night").stream()
        .map(name -> USUAL.find(day + " " + name).orElseThrow().length())
        .reduce(Duration.ZERO, Duration::plus);
  }

  private static List<CalendarVersion> randomVersions(Random random) {
    List<ShiftPattern> first =
        List.of(pattern("A", clock(random, 0)), pattern("B", clock(random, 12)));
    Set<DayOfWeek> one = EnumSet.of(DayOfWeek.of(1 + random.nextInt(7)));
    ShiftPattern weekly =
        new ShiftPattern("Week", LocalTime.parse(clock(random, 0)), one, List.of("x", "y"));
    return List.of(version(1, "2024-06-01", first), version(2, "2026-03-01", List.of(weekly)));
  }

  private static String clock(Random random, int firstHour) {
    return LocalTime.of(firstHour + random.nextInt(12), random.nextInt(60)).toString();
  }

  private static ShiftPattern pattern(String name, String startsAt) {
    return ShiftPattern.daily(name, startsAt);
  }

  private static ShiftBook book(ShiftPattern... patterns) {
    return new ShiftBook(List.of(version(1, "2026-01-01", List.of(patterns))), BERLIN);
  }

  private static CalendarVersion version(int number, String from, List<ShiftPattern> patterns) {
    return new CalendarVersion(
        number,
        LocalDate.parse(from),
        new ShiftCalendar(patterns, 2),
        "Kim",
        "as agreed",
        Instant.EPOCH);
  }
}
