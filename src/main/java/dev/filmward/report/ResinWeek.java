package dev.filmward.report;

import dev.filmward.capability.CapabilityStatement;
import dev.filmward.capability.Giveaway;
import dev.filmward.capability.ResinCost;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.FilmDensity;
import dev.filmward.report.CharacteristicWeek.GiveawayWeek;
import dev.filmward.report.CharacteristicWeek.Money;
import dev.filmward.report.IndexWeek.Kind;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes what is said of a characteristic's capability, gives the resin beyond what is needed. Where
 * the specification changed within the week, of what was made since: money is that share of a
 * week's.
 */
final class ResinWeek {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();
  private static final int FEWEST_FOR_GIVEAWAY = 30;

  private final ReportSettings settings;
  private final String line;
  private final Structure structure;
  private final CharacteristicTally tally;
  private final double share;

  ResinWeek(ReportSettings settings, String line, Structure structure, CharacteristicParts parts) {
    this.settings = settings;
    this.line = line;
    this.structure = structure;
    this.tally = parts.last();
    this.share = parts.shareOfLast();
  }

  /** What could be taken out is said only of a steady process with enough samples. */
  Optional<GiveawayWeek> giveaway(CapabilityStatement statement, IndexWeek index) {
    if (tally.characteristic().kind() == Characteristic.Kind.SHARE) {
      return Optional.empty();
    }
    boolean isSteady =
        index.kind() == Kind.CAPABILITY && tally.tally().samples() >= FEWEST_FOR_GIVEAWAY;
    return Giveaway.of(statement)
        .map(
            found -> {
              OptionalDouble density = FilmDensity.of(structure, tally.characteristic());
              OptionalDouble achievable =
                  isSteady && found.isReachable() ? found.achievableUm() : NOTHING;
              Optional<ResinCost> cost = cost(found, density, isSteady);
              return new GiveawayWeek(
                  found.nominalUm(),
                  achievable,
                  achievable.isPresent() && density.isPresent()
                      ? OptionalDouble.of(achievable.getAsDouble() * density.getAsDouble())
                      : NOTHING,
                  cost.map(known -> OptionalDouble.of(known.kgPerHour())).orElse(NOTHING),
                  cost.map(
                      known ->
                          new Money(
                              share * known.moneyPerWeek(),
                              known.price().currency(),
                              known.price().asOf().toString())));
            });
  }

  private Optional<ResinCost> cost(Giveaway found, OptionalDouble density, boolean isSteady) {
    String layer =
        tally.characteristic().kind() == Characteristic.Kind.TOTAL
            ? ""
            : tally.characteristic().name();
    return density.isPresent() && isSteady && found.isReachable()
        ? settings
            .price(line, structure.code(), layer)
            .flatMap(price -> found.achievable(price.production(density.getAsDouble())))
        : Optional.empty();
  }
}
