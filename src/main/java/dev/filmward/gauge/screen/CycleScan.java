package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Finds readings that are off by whole or half waves of the gauge's pulse, c / (2 f) or half of it
 * in thickness, 1 / f or half of it in time of flight, while other lanes are where they were: two
 * clouds. It is certain where two lanes or two neighbours tell the same. Immutable.
 */
final class CycleScan {
  /** Half a wave must be so many standard deviations of a reading, or it cannot be told. */
  private static final double TELLS = 7;

  /** What each lane that skipped costs, in natural logarithms of odds. */
  private static final double RARITY = 2;

  private static final double CERTAIN = 8;

  private static final double WITHIN = 4;

  /** Places of the film differ that much in all layers together. */
  private static final double FLAT = 0.01;

  private static final int MOST_HALVES = 2;
  private static final double OTHERS_FLAT = 8;
  private static final double GREAT = 0.25;

  private final HeardFilm film;
  private final HeardSample heard;
  private final Usual usual;

  CycleScan(HeardFilm film, HeardSample heard, Usual usual) {
    this.film = film;
    this.heard = heard;
    this.usual = usual;
  }

  List<Flag> flags(double gaugeMhz) {
    double halfNs = 500 / gaugeMhz;
    List<Flag> flags = new ArrayList<>();
    for (int position = 1; position <= heard.layers(); position++) {
      Excess excess = Excess.of(heard, usual, position, heard.lanesRead());
      List<Integer> skipped = skipped(excess, halfNs);
      if (!skipped.isEmpty() && areOthersFlat(position, skipped)) {
        flags.add(flag(position, skipped, excess, halfNs));
      }
    }
    return flags.size() <= 2 ? flags : List.of();
  }

  /** Indexes of lanes; empty where waves do not explain better than the layer as a whole. */
  private static List<Integer> skipped(Excess excess, double halfNs) {
    List<Integer> skipped = new ArrayList<>();
    double squares = 0;
    for (int i = 0; i < excess.count(); i++) {
      double sd = excess.sd(i);
      double halves = Math.rint(excess.ns(i) / halfNs);
      if (halfNs < TELLS * sd || Math.abs(halves) > MOST_HALVES) {
        return List.of();
      }
      double off = (excess.ns(i) - halves * halfNs) / sd;
      squares += off * off;
      if (halves != 0) {
        skipped.add(excess.lanes().get(i));
      }
    }
    boolean fits = squares < Chance.greatestChiSquare(excess.count());
    double gain = (excess.spread() - squares) / 2 - RARITY * skipped.size();
    return fits && gain > CERTAIN ? skipped : List.of();
  }

  /** Whether the layers that are no neighbours are as usual, also in the lanes that skipped. */
  private boolean areOthersFlat(int position, List<Integer> skipped) {
    double sum = 0;
    for (int other = 1; other <= heard.layers(); other++) {
      if (Math.abs(other - position) > 1) {
        sum += Excess.of(heard, usual, other, heard.lanesRead()).surprise();
      }
    }
    return sum < OTHERS_FLAT && skipped.stream().noneMatch(lane -> isLaneOff(position, lane));
  }

  /** Whether all other layers of a lane are off together, as where a die bolt lets go. */
  private boolean isLaneOff(int position, int lane) {
    double common = 0;
    double weight = 0;
    for (int other = 1; other <= heard.layers(); other++) {
      Excess there = Excess.of(heard, usual, other, List.of(lane));
      if (Math.abs(other - position) > 1 && there.count() > 0) {
        double each = 1 / (there.noise() * there.noise());
        common += each * there.meanRatio();
        weight += each;
      }
    }
    return weight > 0 && Math.abs(common / weight) > FLAT + WITHIN / Math.sqrt(weight);
  }

  /** Whether half a wave is more than any process does to one lane. */
  private boolean isGreat(int position, double halfNs) {
    return halfNs > GREAT * usual.layerNs(position);
  }

  private Flag flag(int position, List<Integer> skipped, Excess excess, double halfNs) {
    boolean isSome = skipped.size() < excess.count();
    boolean isCertain = isSome && (skipped.size() >= 2 || isGreat(position, halfNs));
    return new Flag(
        Misread.CYCLE_SKIP,
        List.of(position),
        heard.numbers(skipped),
        isCertain ? Strength.CERTAIN : Strength.LIKELY,
        Effect.SPOILS_THE_MEAN,
        String.format(
            Locale.ROOT,
            "Layer %d is off by %s um or twice that, half a wave or a whole one, at %s, and as"
                + " usual at %d others.",
            position,
            Evidence.um(film.um(position, halfNs)),
            Evidence.lanes(heard.numbers(skipped)),
            excess.count() - skipped.size()));
  }
}
