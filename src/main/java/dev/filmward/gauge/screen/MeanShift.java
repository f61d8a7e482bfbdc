package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import java.util.List;

/**
 * What flagged readings do to the means of a sample. They spoil it where they move the mean of a
 * layer by more than one standard deviation of the samples' means, against what it would be had
 * their lanes read as the others did; where one of them is off by more than four standard
 * deviations of a reading, which stretches the range; or where no other lane was measured.
 * Immutable.
 */
final class MeanShift {
  private static final double FAR = 4;

  private final HeardFilm film;
  private final HeardSample heard;
  private final Usual usual;

  MeanShift(HeardFilm film, HeardSample heard, Usual usual) {
    this.film = film;
    this.heard = heard;
    this.usual = usual;
  }

  Effect effect(Flag flag) {
    return flag.positions().stream().anyMatch(position -> spoils(position, flag.lanes()))
        ? Effect.SPOILS_THE_MEAN
        : Effect.LEAVES_THE_MEAN;
  }

  private boolean spoils(int position, List<Integer> flagged) {
    double excess = 0;
    double ratio = 0;
    int good = 0;
    int bad = 0;
    for (int lane = 0; lane < heard.lanes(); lane++) {
      if (heard.sample().isMeasured(position, lane)) {
        if (flagged.contains(heard.sample().lane(lane))) {
          bad++;
        } else {
          good++;
          ratio += heard.sample().thicknessUm(position, lane) / usualUm(position, lane);
        }
      }
    }
    if (bad == 0 || good == 0 || !usual.isKnown()) {
      return bad > 0;
    }
    for (int lane = 0; lane < heard.lanes(); lane++) {
      if (heard.sample().isMeasured(position, lane)
          && flagged.contains(heard.sample().lane(lane))) {
        double wouldBe = usualUm(position, lane) * ratio / good;
        double off = heard.sample().thicknessUm(position, lane) - wouldBe;
        if (Math.abs(off) > FAR * usual.noise(position) * wouldBe) {
          return true;
        }
        excess += off;
      }
    }
    double deviation = usual.meanNoise(position) * film.um(position, usual.layerNs(position));
    return Math.abs(excess) / (good + bad) > deviation;
  }

  private double usualUm(int position, int lane) {
    return film.um(position, usual.ns(position, heard.sample().lane(lane)));
  }
}
