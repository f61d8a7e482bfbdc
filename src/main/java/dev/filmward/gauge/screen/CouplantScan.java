package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds couplant that is counted as a part of the first layer: that layer, and with it the total,
 * is up, all others are flat. A process that feeds more into the first layer raises all lanes by
 * one factor, so it is couplant where lanes differ far more than the gauge's noise, or where the
 * layer is up by more than 40 % at once. Immutable.
 */
final class CouplantScan {
  private static final double LEAST = 0.08;
  private static final double NO_PROCESS = 0.40;
  private static final double OTHERS_FLAT = 6;
  private static final int FEWEST_LANES = 3;

  private final HeardFilm film;
  private final HeardSample heard;
  private final Usual usual;

  CouplantScan(HeardFilm film, HeardSample heard, Usual usual) {
    this.film = film;
    this.heard = heard;
    this.usual = usual;
  }

  List<Flag> flags() {
    List<Integer> lanes = heard.lanesRead();
    Excess first = Excess.of(heard, usual, 1, lanes);
    if (first.count() == 0 || !(first.meanRatio() > LEAST) || !areOthersFlat(lanes)) {
      return List.of();
    }
    List<Integer> up = up(first);
    boolean isGreat = first.meanRatio() > NO_PROCESS;
    boolean isUneven =
        usual.isSettled()
            && first.count() >= FEWEST_LANES
            && first.spread() > Chance.greatestChiSquare(first.count() - 1);
    return 3 * up.size() >= 2 * first.count() && (isGreat || isUneven)
        ? List.of(flag(first, up))
        : List.of();
  }

  private boolean areOthersFlat(List<Integer> lanes) {
    double sum = 0;
    for (int position = 2; position <= heard.layers(); position++) {
      sum += Excess.of(heard, usual, position, lanes).surprise();
    }
    return sum < OTHERS_FLAT;
  }

  private static List<Integer> up(Excess first) {
    List<Integer> up = new ArrayList<>();
    for (int i = 0; i < first.count(); i++) {
      if (first.ns(i) > 2 * first.sd(i)) {
        up.add(first.lanes().get(i));
      }
    }
    return up;
  }

  private Flag flag(Excess first, List<Integer> up) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < first.count(); i++) {
      least = Math.min(least, film.um(1, first.ns(i)));
      most = Math.max(most, film.um(1, first.ns(i)));
    }
    List<Integer> numbers = heard.numbers(up);
    return new Flag(
        Misread.COUPLANT,
        List.of(1),
        numbers,
        Strength.CERTAIN,
        Effect.SPOILS_THE_MEAN,
        "Layer 1 and the total are up by the same "
            + Evidence.um(least)
            + " to "
            + Evidence.um(most)
            + " um ("
            + Evidence.percent(first.meanRatio())
            + "), unevenly across the web or more than a process does at once, while the other"
            + " layers are flat.");
  }
}
