package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.capability.CapabilityStatement;
import dev.filmward.capability.Stability;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.echo.FilmOf;
import dev.filmward.pipeline.SpecTimes;
import dev.filmward.report.CharacteristicWeek.GiveawayWeek;
import dev.filmward.report.ReportSettings.FilmPrice;
import dev.filmward.web.SmallFilm;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Money is of the time that its giveaway is of, worked out from the output and the price. */
class ResinWeekTest {
  private static final Instant MONDAY = Instant.parse("2026-11-16T00:00:00Z");
  private static final int BEFORE = 30;
  private static final int SINCE = 60;
  private static final double HOURS = 160;
  private static final double PER_KG = 1.5;

  private final Structure structure = FilmOf.yaml(SmallFilm.STRUCTURES);
  private final Characteristic skin = Characteristic.layer(structure.reported().get(0));

  @Test
  void ofAWholeWeekItIsTheOutputTimesThePrice() {
    GiveawayWeek found = giveaway(new SpecTimes(List.of(spec(Optional.empty(), 16))));
    assertThat(amount(found))
        .isPositive()
        .isCloseTo(found.kgPerHour().orElseThrow() * HOURS * PER_KG, within(1e-9));
  }

  @Test
  void whereTheSpecificationChangedItIsOfTheShareOfTheWeekSince() {
    GiveawayWeek found =
        giveaway(
            new SpecTimes(List.of(spec(Optional.empty(), 17), spec(Optional.of(at(BEFORE)), 16))));
    double wholeWeek = found.kgPerHour().orElseThrow() * HOURS * PER_KG;
    assertThat(amount(found)).isCloseTo(wholeWeek * SINCE / (BEFORE + SINCE), within(1e-9));
  }

  private static double amount(GiveawayWeek found) {
    return found.money().orElseThrow().amount();
  }

  private GiveawayWeek giveaway(SpecTimes asked) {
    CharacteristicParts parts = new CharacteristicParts(skin, asked, at(BEFORE + SINCE));
    Random random = new Random(7);
    for (int i = 0; i < BEFORE + SINCE; i++) {
      parts.add(sample(i, random));
    }
    CapabilityStatement statement =
        CapabilityStatement.of(
                parts.last().tally(),
                CapabilityQuestion.of(SpecLimits.NONE, parts.last().spec()),
                new Stability(SINCE, 0, Stability.FALSE_SHARE_OF_ZONE_TESTS))
            .orElseThrow();
    OptionalDouble none = OptionalDouble.empty();
    IndexWeek capable =
        new IndexWeek(
            IndexWeek.Kind.CAPABILITY,
            IndexWeek.Why.STABLE,
            IndexWeek.Method.NORMAL,
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            IndexWeek.Standing.SHOWN);
    FilmPrice price =
        new FilmPrice(
            "",
            "",
            "Skin",
            PER_KG,
            "EUR",
            LocalDate.of(2026, 11, 1),
            OptionalDouble.of(200),
            none,
            none,
            HOURS);
    ReportSettings settings =
        new ReportSettings(Asked.USUAL, List.of(price), ReportSettings.USUAL.schedule());
    return new ResinWeek(settings, "Blown 1", structure, parts)
        .giveaway(statement, capable)
        .orElseThrow();
  }

  private static SpecTimes.Spec spec(Optional<Instant> from, double lower) {
    return new SpecTimes.Spec(from, SpecLimits.of(lower, 20, 24), SpecLimits.NONE);
  }

  /** Five lanes about 20 um, so that much lies above what 16 um needs. */
  private static Sample sample(int number, Random random) {
    double[][] readings = new double[2][5];
    for (int lane = 0; lane < 5; lane++) {
      readings[0][lane] = 20 + 0.3 * random.nextGaussian();
      readings[1][lane] = 30;
    }
    SampleKey key = new SampleKey("Blown 1", "DUO-50", "R1", "S" + number);
    return new Sample(key, at(number), new int[] {1, 2, 3, 4, 5}, readings);
  }

  private static Instant at(int number) {
    return MONDAY.plus(Duration.ofHours(number));
  }
}
