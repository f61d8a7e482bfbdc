package dev.filmward.diagnosis;

import dev.filmward.film.Sample;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** When things happened, counted in the samples that are looked at. Immutable. */
final class Timeline {
  private static final int WORTH_A_LOOK = 6;
  private static final Map<Boundary.Kind, Statistic> DISTANCES =
      Map.of(
          Boundary.Kind.ROLL, Statistic.TO_ROLL,
          Boundary.Kind.SHIFT, Statistic.TO_SHIFT,
          Boundary.Kind.RESIN_LOT, Statistic.TO_RESIN_LOT,
          Boundary.Kind.SCREEN_CHANGE, Statistic.TO_SCREEN_CHANGE,
          Boundary.Kind.CALIBRATION, Statistic.TO_CALIBRATION,
          Boundary.Kind.RESTART, Statistic.TO_RESTART);

  private final List<Sample> samples;
  private final List<Boundary> boundaries;

  Timeline(List<Sample> samples, List<Boundary> known) {
    this.samples = samples;
    List<Boundary> all = new ArrayList<>(known);
    for (int t = 1; t < samples.size(); t++) {
      if (!samples.get(t).key().roll().equals(samples.get(t - 1).key().roll())) {
        all.add(
            new Boundary(
                Boundary.Kind.ROLL,
                samples.get(t).takenAt(),
                List.of(),
                samples.get(t).key().roll()));
      }
    }
    this.boundaries = List.copyOf(all);
  }

  /** Index of the first sample taken at a moment or later; the size where there is none. */
  int indexAt(Instant moment) {
    int low = 0;
    int high = samples.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (samples.get(middle).takenAt().isBefore(moment)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  int[] screens() {
    return boundaries.stream()
        .filter(boundary -> boundary.kind() == Boundary.Kind.SCREEN_CHANGE)
        .mapToInt(boundary -> indexAt(boundary.at()))
        .toArray();
  }

  /** Whether a boundary could be where a change began that moved some layers. */
  private static boolean concerns(Boundary boundary, List<Integer> moved) {
    return boundary.positions().isEmpty()
        || moved.isEmpty()
        || !Collections.disjoint(boundary.positions(), moved);
  }

  /** Notes how far a change is from the nearest boundary of each kind that there is. */
  void note(Findings findings, LevelChange change) {
    List<Integer> moved = change.clearest.positions();
    DISTANCES.forEach(
        (kind, statistic) -> {
          OptionalInt nearest =
              boundaries.stream()
                  .filter(boundary -> boundary.kind() == kind && concerns(boundary, moved))
                  .mapToInt(boundary -> distance(boundary, change))
                  .min();
          nearest.ifPresent(distance -> findings.put(statistic, distance, moved));
        });
  }

  /** 0 where the change may as well have begun there. */
  private int distance(Boundary boundary, LevelChange change) {
    int at = indexAt(boundary.at());
    int distance = Math.abs(at - change.course.from());
    boolean fits = change.choice.mayBeginAt(at) || change.choice.mayStepAt(at);
    return distance <= WORTH_A_LOOK && fits ? 0 : distance;
  }

  /** Boundaries that a change may have begun with. */
  List<Boundary> at(LevelChange change) {
    return boundaries.stream()
        .filter(boundary -> concerns(boundary, change.clearest.positions()))
        .filter(boundary -> distance(boundary, change) == 0)
        .toList();
  }
}
