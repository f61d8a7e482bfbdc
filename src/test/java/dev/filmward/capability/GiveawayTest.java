package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.SpecLimits;
import java.time.LocalDate;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class GiveawayTest {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();
  private static final Offset<Double> EXACT = within(1e-9);
  private static final LocalDate DAY = LocalDate.of(2026, 11, 2);
  private static final LineOutput WEB = new LineOutput.Web(2, 40);
  private static final Production FILM =
      new Production(0.93, WEB, 140, new ResinPrice(1.5, "EUR", DAY));
  private static final Production BARRIER =
      new Production(1.18, WEB, 140, new ResinPrice(7, "EUR", DAY));

  /** 80 um x 0.93 g/cm3 = 74.4 g/m2, over 2 m x 40 m/min x 60 min = 4800 m2/h: 357 kg/h. */
  @Test
  void theOutputOfAFilm() {
    double kgPerHour = WEB.kgPerHour(80, 80, 0.93);

    assertThat(kgPerHour).isCloseTo(80 * 0.93 * 2 * 40 * 60 / 1000, EXACT);
    assertThat(kgPerHour).isCloseTo(357, within(0.5));
  }

  /** 1 um: 4.46 kg/h; in 7000 h 31 t, at 1.5 EUR/kg 47 kEUR. In a week of 140 h, 937.44 EUR. */
  @Test
  void oneMicrometreTooMuchOfAFilm() {
    ResinCost cost = giveaway(81, 80).nominal(FILM).orElseThrow();

    assertThat(cost.um()).isCloseTo(1, EXACT);
    assertThat(cost.gPerM2()).isCloseTo(0.93, EXACT);
    assertThat(cost.kgPerHour()).isCloseTo(1 * 0.93 * 4800 / 1000, EXACT);
    assertThat(cost.kgPerHour()).isCloseTo(4.46, within(0.005));
    assertThat(cost.kgPerHour() * 7000 / 1000).isCloseTo(31, within(0.5));
    assertThat(cost.moneyPerWeek()).isCloseTo(4.464 * 140 * 1.5, EXACT);
    assertThat(cost.moneyPerWeek() / 140 * 7000 / 1000).isCloseTo(47, within(0.5));
    assertThat(cost.price().asOf()).isEqualTo(DAY);
  }

  /** 0.5 um of EVOH: 2.83 kg/h, 20 EUR/h, 139 kEUR in 7000 h at 7 EUR/kg. */
  @Test
  void halfAMicrometreTooMuchOfABarrier() {
    ResinCost cost = giveaway(5.5, 5).nominal(BARRIER).orElseThrow();

    assertThat(cost.kgPerHour()).isCloseTo(0.5 * 1.18 * 4800 / 1000, EXACT);
    assertThat(cost.kgPerHour()).isCloseTo(2.83, within(0.005));
    assertThat(cost.kgPerHour() * 7).isCloseTo(20, within(0.5));
    assertThat(cost.moneyPerWeek() / 140 * 7000 / 1000).isCloseTo(139, within(0.5));
  }

  /** Of 81 um one is 357 x 1/80 too much when the line makes 81/80 of 357.12 kg/h. */
  @Test
  void theOutputOfTheLineSaysTheSameAsItsSpeed() {
    LineOutput mass = new LineOutput.Mass(357.12 * 81 / 80);
    Production weighed = new Production(0.93, mass, 140, new ResinPrice(1.5, "EUR", DAY));

    assertThat(giveaway(81, 80).nominal(weighed).orElseThrow().kgPerHour()).isCloseTo(4.464, EXACT);
  }

  /** 12.6 + 3 x 1.33 x 0.2 = 13.398, so that of a mean of 14 um 0.602 could go. */
  @Test
  void theLowestMeanKeepsTheRequiredPpk() {
    SpecLimits spec = SpecLimits.of(12.6, 14, 15.4);
    Giveaway giveaway = Giveaway.of(Indices.of(14, 0.2, spec), 1.33, OptionalDouble.of(13.3));

    assertThat(giveaway.lowestMeanUm().getAsDouble()).isCloseTo(13.398, EXACT);
    assertThat(giveaway.achievableUm().getAsDouble()).isCloseTo(0.602, EXACT);
    assertThat(giveaway.nominalUm().getAsDouble()).isCloseTo(0.7, EXACT);
    assertThat(giveaway.achievable(FILM).orElseThrow().gPerM2()).isCloseTo(0.602 * 0.93, EXACT);
    assertThat(Indices.of(13.398, 0.2, spec).cpk().getAsDouble()).isCloseTo(1.33, EXACT);
    assertThat(giveaway.words())
        .isEqualTo(
            "The mean is 0.70 um above the least mean that is asked for. "
                + "0.60 um could be taken out and a Ppk of 1.33 be kept.");
  }

  /** 12.6 + 3 x 1.33 x 0.3 = 13.797: above the contract's 13.3 and still 0.297 too thin. */
  @Test
  void aMeanTooLowForItsSpreadIsARiskInWords() {
    Indices points = Indices.of(13.5, 0.3, SpecLimits.of(12.6, 14, 15.4));
    Giveaway giveaway = Giveaway.of(points, 1.33, OptionalDouble.of(13.3));

    assertThat(giveaway.achievableUm().getAsDouble()).isCloseTo(-0.297, EXACT);
    assertThat(giveaway.achievable(FILM).orElseThrow().moneyPerWeek()).isNegative();
    assertThat(giveaway.words()).contains("Risk, not saving: 0.30 um are missing");
    assertThat(giveaway(13, 13.3).words()).startsWith("Risk: the mean is 0.30 um below");
  }

  /** 3 x 1.33 x 0.4 = 1.596 from both limits leaves nothing of 2.8. */
  @Test
  void aSpreadTooWideForAnyMeanIsSaid() {
    Giveaway giveaway =
        Giveaway.of(Indices.of(14, 0.4, SpecLimits.of(12.6, 14, 15.4)), 1.33, NOTHING);

    assertThat(giveaway.isReachable()).isFalse();
    assertThat(giveaway.words())
        .isEqualTo("With this spread no mean keeps a Ppk of 1.33; steady the line first.");
  }

  @Test
  void withoutALowerLimitThereIsNoAchievableGiveaway() {
    Giveaway giveaway = giveaway(81, 80);

    assertThat(giveaway.achievableUm()).isEmpty();
    assertThat(giveaway.achievable(FILM)).isEmpty();
    assertThat(giveaway.words()).contains("Without a lower specification limit");
  }

  @Test
  void quantitiesThatCannotBeAreRefused() {
    assertThatThrownBy(() -> new LineOutput.Web(0, 40)).hasMessageContaining("width");
    assertThatThrownBy(() -> new LineOutput.Mass(Double.NaN)).hasMessageContaining("kg/h");
    assertThatThrownBy(() -> new ResinPrice(1, " ", DAY)).hasMessageContaining("currency");
    assertThatThrownBy(() -> new Production(0.9, WEB, 169, FILM.price()))
        .hasMessageContaining("168");
  }

  private static Giveaway giveaway(double mean, double contract) {
    Indices points = Indices.of(mean, 1, SpecLimits.NONE);
    return Giveaway.of(points, 1.33, OptionalDouble.of(contract));
  }
}
