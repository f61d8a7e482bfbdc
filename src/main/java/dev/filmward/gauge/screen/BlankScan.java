package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Finds readings that are no thickness: blank or zero, or at the gauge's range end, and lanes that
 * are usually there and have no readings at all. Immutable.
 */
final class BlankScan {
  private final HeardSample heard;
  private final RecentSamples recent;

  BlankScan(HeardSample heard, RecentSamples recent) {
    this.heard = heard;
    this.recent = recent;
  }

  /** Whether there are fewer lanes than in the sample before. */
  static boolean isShort(HeardSample heard, RecentSamples recent) {
    return recent.last().map(last -> heard.lanes() < last.lanes()).orElse(false);
  }

  /**
   * @param explained flags whose readings need no other explanation
   */
  List<Flag> flags(List<Flag> explained) {
    List<Flag> flags = new ArrayList<>();
    List<Integer> missing = missingLanes();
    if (!missing.isEmpty()) {
      flags.add(
          new Flag(
              Misread.LANE_MISSING,
              allPositions(),
              missing,
              Strength.CERTAIN,
              Effect.LEAVES_THE_MEAN,
              "No layer was read at "
                  + Evidence.lanes(missing)
                  + ", where most of the last samples have readings."));
    }
    for (int position = 1; position <= heard.layers(); position++) {
      cells(explained, Misread.LOST_ECHO, position).ifPresent(flags::add);
      cells(explained, Misread.RANGE_END, position).ifPresent(flags::add);
    }
    return flags;
  }

  private List<Integer> allPositions() {
    return IntStream.rangeClosed(1, heard.layers()).boxed().toList();
  }

  private List<Integer> missingLanes() {
    TreeMap<Integer, Integer> usual = new TreeMap<>();
    List<HeardSample> counting = recent.counting();
    for (HeardSample each : counting) {
      each.numbers(each.lanesRead()).forEach(lane -> usual.merge(lane, 1, Integer::sum));
    }
    heard.numbers(heard.lanesRead()).forEach(usual::remove);
    return counting.size() < Usual.ENOUGH
        ? List.of()
        : usual.entrySet().stream()
            .filter(lane -> 2 * lane.getValue() > counting.size())
            .map(Map.Entry::getKey)
            .toList();
  }

  private Optional<Flag> cells(List<Flag> explained, Misread kind, int position) {
    List<Integer> lanes =
        heard.numbers(
            heard.lanesRead().stream()
                .filter(lane -> isSo(kind, position, lane))
                .filter(lane -> !isExplained(explained, position, heard.sample().lane(lane)))
                .toList());
    String words =
        kind == Misread.LOST_ECHO
            ? "Nothing was read"
            : "The greatest thickness that the gauge is set to expect was read";
    return lanes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Flag(
                kind,
                List.of(position),
                lanes,
                Strength.CERTAIN,
                Effect.SPOILS_THE_MEAN,
                words + " in layer " + position + " at " + Evidence.lanes(lanes) + "."));
  }

  private boolean isSo(Misread kind, int position, int lane) {
    return kind == Misread.LOST_ECHO
        ? heard.isBlank(position, lane)
        : heard.isAtTheEnd(position, lane);
  }

  private static boolean isExplained(List<Flag> explained, int position, int lane) {
    return explained.stream()
        .filter(flag -> flag.strength() == Strength.CERTAIN)
        .anyMatch(flag -> flag.positions().contains(position) && flag.lanes().contains(lane));
  }
}
