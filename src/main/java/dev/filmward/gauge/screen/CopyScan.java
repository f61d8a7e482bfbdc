package dev.filmward.gauge.screen;

import dev.filmward.film.Sample;
import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Finds values that are the same to the last digit where chance would not give them: five readings
 * or more of a layer side by side, a layer of one lane over five samples, or a whole sample like
 * the one before. Two readings are equal by chance about once in 3.5 sigma / resolution; the
 * resolution is the least difference that was read. Immutable.
 */
final class CopyScan {
  static final int FEWEST = 5;

  private static final double RARE = 1e-6;
  private static final double LEAST_SHARE = 0.001;
  private static final double SPREAD = 3.5;

  private final HeardSample heard;
  private final Sample sample;
  private final RecentSamples recent;

  CopyScan(HeardSample heard, RecentSamples recent) {
    this.heard = heard;
    this.sample = heard.sample();
    this.recent = recent;
  }

  List<Flag> flags() {
    if (isCopied()) {
      return List.of(
          flag(
              IntStream.rangeClosed(1, heard.layers()).boxed().toList(),
              heard.numbers(heard.lanesRead()),
              "All "
                  + sample.readings()
                  + " readings are those of the sample before, to the last digit."));
    }
    List<Flag> flags = new ArrayList<>();
    for (int position = 1; position <= heard.layers(); position++) {
      addRun(position, flags);
      addStuck(position, flags);
    }
    return flags;
  }

  /** Whether the sample before has the same readings, more of them than by chance. */
  private boolean isCopied() {
    HeardSample before = recent.last().orElse(null);
    if (before == null
        || sample.readings() < FEWEST
        || !isSame(before.sample(), 1, 0)
        || before.lanes() != heard.lanes()) {
      return false;
    }
    double chance = 1;
    for (int position = 1; position <= heard.layers(); position++) {
      double equal = equalByChance(position);
      for (int lane = 0; lane < heard.lanes(); lane++) {
        if (sample.isMeasured(position, lane)) {
          if (!isSame(before.sample(), position, lane)) {
            return false;
          }
          chance *= equal;
        }
      }
    }
    return chance < RARE;
  }

  private boolean isSame(Sample other, int position, int lane) {
    return lane < other.laneCount()
        && other.lane(lane) == sample.lane(lane)
        && sample.isMeasured(position, lane) == other.isMeasured(position, lane)
        && (!sample.isMeasured(position, lane)
            || sample.thicknessUm(position, lane) == other.thicknessUm(position, lane));
  }

  private void addRun(int position, List<Flag> flags) {
    int from = 0;
    for (int lane = 1; lane <= heard.lanes(); lane++) {
      if (lane == heard.lanes() || !isLikeNeighbour(position, lane)) {
        int length = lane - from;
        if (length >= FEWEST && isRare(position, length, heard.lanes())) {
          List<Integer> lanes = heard.numbers(IntStream.range(from, lane).boxed().toList());
          flags.add(
              flag(
                  List.of(position),
                  lanes,
                  length
                      + " readings of layer "
                      + position
                      + " side by side are "
                      + sample.thicknessUm(position, from)
                      + " um, to the last digit."));
        }
        from = lane;
      }
    }
  }

  private boolean isLikeNeighbour(int position, int lane) {
    return sample.isMeasured(position, lane)
        && sample.isMeasured(position, lane - 1)
        && sample.thicknessUm(position, lane) == sample.thicknessUm(position, lane - 1);
  }

  private void addStuck(int position, List<Flag> flags) {
    HeardSample before = recent.last().orElse(null);
    if (before == null) {
      return;
    }
    TreeSet<Integer> stuck = new TreeSet<>();
    for (int lane = 0; lane < heard.lanes(); lane++) {
      if (sample.isMeasured(position, lane)
          && isSame(before.sample(), position, lane)
          && isStuck(position, lane)) {
        stuck.add(sample.lane(lane));
      }
    }
    if (!stuck.isEmpty()) {
      flags.add(
          flag(
              List.of(position),
              List.copyOf(stuck),
              "Layer "
                  + position
                  + " has the same value in "
                  + FEWEST
                  + " samples at "
                  + Evidence.lanes(List.copyOf(stuck))
                  + ", to the last digit."));
    }
  }

  private boolean isStuck(int position, int lane) {
    List<HeardSample> back = recent.newest(FEWEST - 1);
    return back.size() == FEWEST - 1
        && back.stream().allMatch(each -> isSame(each.sample(), position, lane))
        && isRare(position, FEWEST, heard.lanes());
  }

  /** Whether so many equal ones are rarer than once in a million samples. */
  private boolean isRare(int position, int length, int places) {
    double chance = Math.pow(equalByChance(position), length - 1.0);
    return chance * places * heard.layers() < RARE;
  }

  private double equalByChance(int position) {
    Usual usual = recent.usual();
    double[] all =
        recent.counting().stream()
            .flatMapToDouble(
                each ->
                    IntStream.range(0, each.lanes())
                        .filter(lane -> each.sample().isMeasured(position, lane))
                        .mapToDouble(lane -> each.sample().thicknessUm(position, lane)))
            .sorted()
            .toArray();
    if (all.length == 0) {
      return 1;
    }
    double middle = all[all.length / 2];
    double step = Double.POSITIVE_INFINITY;
    for (int i = 1; i < all.length; i++) {
      double difference = all[i] - all[i - 1];
      step = difference > 1e-9 * middle ? Math.min(step, difference) : step;
    }
    double resolution = Double.isInfinite(step) ? LEAST_SHARE * middle : step;
    return Math.min(1, resolution / (SPREAD * usual.noise(position) * middle));
  }

  private static Flag flag(List<Integer> positions, List<Integer> lanes, String evidence) {
    return new Flag(
        Misread.COPIED, positions, lanes, Strength.CERTAIN, Effect.SPOILS_THE_MEAN, evidence);
  }
}
