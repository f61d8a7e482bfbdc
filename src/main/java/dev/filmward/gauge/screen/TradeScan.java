package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds a boundary that is read in the wrong place: two neighbours trade time of flight, each lane
 * by an amount of its own, and their sum stays. Weighed against four other stories, each of them as
 * free: only one of the two moved, lane by lane; both moved as a whole; both moved alike in each
 * lane. It is only likely where the sample before showed the same, since a boundary is misplaced
 * once and a process goes on. Immutable.
 */
final class TradeScan {
  private static final double CERTAIN = 6;
  private static final double LIKELY = 4;
  private static final double OTHERS_FLAT = 8;
  private static final double LEAST_SHARE = 0.10;
  private static final int FEWEST_LANES = 3;

  private final HeardFilm film;
  private final HeardSample heard;
  private final RecentSamples recent;
  private final Usual usual;

  TradeScan(HeardFilm film, HeardSample heard, RecentSamples recent) {
    this.film = film;
    this.heard = heard;
    this.recent = recent;
    this.usual = recent.usual();
  }

  List<Flag> flags() {
    List<Flag> flags = new ArrayList<>();
    for (int first = 1; first < heard.layers(); first++) {
      Pair pair = new Pair(heard, first);
      double gain = pair.gain();
      if (gain > LIKELY && pair.othersAreFlat() && !pair.moved().isEmpty()) {
        boolean isRepeated =
            recent.last().map(last -> new Pair(last, pair.first).gain() > LIKELY).orElse(false);
        flags.add(pair.flag(gain > CERTAIN && !isRepeated ? Strength.CERTAIN : Strength.LIKELY));
      }
    }
    return flags;
  }

  /** Two neighbours in one sample. */
  private final class Pair {
    private final HeardSample of;
    private final int first;
    private final Excess outer;
    private final Excess inner;

    private Pair(HeardSample of, int first) {
      this.of = of;
      this.first = first;
      List<Integer> lanes =
          of.lanesRead().stream()
              .filter(lane -> !Double.isNaN(of.ns(first, lane) + of.ns(first + 1, lane)))
              .toList();
      this.outer = Excess.of(of, usual, first, lanes);
      this.inner = Excess.of(of, usual, first + 1, lanes);
    }

    /** By how much trading explains better than the best of the other stories. */
    private double gain() {
      if (outer.count() < FEWEST_LANES) {
        return 0;
      }
      double traded = 0;
      double outerAlone = 0;
      double innerAlone = 0;
      double alike = 0;
      for (int i = 0; i < outer.count(); i++) {
        traded += traded(i);
        outerAlone += half(inner.ns(i), inner.sd(i));
        innerAlone += half(outer.ns(i), outer.sd(i));
        alike += alike(i);
      }
      double whole = outer.spread() / 2 + inner.spread() / 2;
      double best = Math.min(Math.min(outerAlone, innerAlone), Math.min(whole, alike));
      return best - traded;
    }

    private double traded(int i) {
      return half(outer.ns(i) + inner.ns(i), Math.hypot(outer.sd(i), inner.sd(i)));
    }

    private double alike(int i) {
      double difference = outer.ns(i) / outer.usualNs(i) - inner.ns(i) / inner.usualNs(i);
      return half(difference, Math.hypot(outer.noise(), inner.noise()));
    }

    private static double half(double off, double sd) {
      return off * off / (2 * sd * sd);
    }

    /** Of layer {@code first} at a lane, ns. */
    private double trade(int i) {
      double outerWeight = 1 / (outer.sd(i) * outer.sd(i));
      double innerWeight = 1 / (inner.sd(i) * inner.sd(i));
      return (outer.ns(i) * outerWeight - inner.ns(i) * innerWeight) / (outerWeight + innerWeight);
    }

    private List<Integer> moved() {
      List<Integer> moved = new ArrayList<>();
      for (int i = 0; i < outer.count(); i++) {
        double sd = Math.min(outer.sd(i), inner.sd(i));
        double thinner = Math.min(outer.usualNs(i), inner.usualNs(i));
        if (Math.abs(trade(i)) > Math.max(3 * sd, LEAST_SHARE * thinner)) {
          moved.add(outer.lanes().get(i));
        }
      }
      return moved;
    }

    private boolean othersAreFlat() {
      double sum = 0;
      for (int position = 1; position <= of.layers(); position++) {
        if (position != first && position != first + 1) {
          sum += Excess.of(of, usual, position, of.lanesRead()).surprise();
        }
      }
      return sum < OTHERS_FLAT;
    }

    private Flag flag(Strength strength) {
      double least = 0;
      double most = 0;
      for (int i = 0; i < outer.count(); i++) {
        least = Math.min(least, trade(i));
        most = Math.max(most, trade(i));
      }
      return new Flag(
          Misread.NEIGHBOURS_TRADE,
          List.of(first, first + 1),
          of.numbers(moved()),
          strength,
          Effect.SPOILS_THE_MEAN,
          "Layer "
              + first
              + " has from "
              + Evidence.um(film.um(first, least))
              + " to "
              + Evidence.um(film.um(first, most))
              + " um more than usual, each lane by itself, and layer "
              + (first + 1)
              + " as much less in time of flight, so that both together are as usual."
              + (strength == Strength.CERTAIN ? "" : " A process may do this too: read it again."));
    }
  }
}
