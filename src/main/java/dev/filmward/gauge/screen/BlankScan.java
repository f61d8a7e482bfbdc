package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
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
    cells(explained, Misread.LOST_ECHO, heard::isBlank, "Nothing was read").ifPresent(flags::add);
    cells(
            explained,
            Misread.RANGE_END,
            heard::isAtTheEnd,
            "The greatest thickness that the gauge is set to expect was read")
        .ifPresent(flags::add);
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

  private Optional<Flag> cells(
      List<Flag> explained, Misread kind, BiPredicate<Integer, Integer> isSo, String words) {
    SortedSet<Integer> positions = new TreeSet<>();
    SortedSet<Integer> lanes = new TreeSet<>();
    for (int lane : heard.lanesRead()) {
      int number = heard.sample().lane(lane);
      for (int position = 1; position <= heard.layers(); position++) {
        if (isSo.test(position, lane) && !isExplained(explained, position, number)) {
          positions.add(position);
          lanes.add(number);
        }
      }
    }
    if (lanes.isEmpty()) {
      return Optional.empty();
    }
    String layers = positions.stream().map(String::valueOf).collect(Collectors.joining(", "));
    return Optional.of(
        new Flag(
            kind,
            List.copyOf(positions),
            List.copyOf(lanes),
            Strength.CERTAIN,
            Effect.SPOILS_THE_MEAN,
            words + " in layer " + layers + " at " + Evidence.lanes(List.copyOf(lanes)) + "."));
  }

  private static boolean isExplained(List<Flag> explained, int position, int lane) {
    return explained.stream()
        .anyMatch(flag -> flag.positions().contains(position) && flag.lanes().contains(lane));
  }
}
