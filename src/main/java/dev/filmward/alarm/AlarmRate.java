package dev.filmward.alarm;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How many alarms came to one operator position in times of a kind: hours, days, shifts.
 *
 * @param average per position and such a time; times of which only a part counts weigh as that part
 * @param peak the most that came to one position in one of them
 * @param peakAt where that one began
 */
public record AlarmRate(double average, int peak, Optional<Instant> peakAt) {

  /**
   * Counts.
   *
   * @param positions the moments of the alarms of each position, ascending
   */
  static AlarmRate of(List<List<Instant>> positions, List<AlarmSpan> times, AlarmSpan period) {
    double weight = times.stream().mapToDouble(period::shareOf).sum();
    int all = positions.stream().mapToInt(List::size).sum();
    int peak = 0;
    Optional<Instant> peakAt = Optional.empty();
    for (List<Instant> position : positions) {
      for (AlarmSpan time : times) {
        int count = time.count(position);
        if (count > peak) {
          peak = count;
          peakAt = Optional.of(time.from());
        }
      }
    }
    double share = weight * positions.size();
    return new AlarmRate(share > 0 ? all / share : 0, peak, peakAt);
  }
}
