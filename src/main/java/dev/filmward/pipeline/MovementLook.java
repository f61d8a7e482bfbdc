package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.MeanSeries;
import dev.filmward.drift.Slope;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.LayerLook.Limit;
import dev.filmward.pipeline.LayerLook.Meeting;
import dev.filmward.pipeline.LayerLook.Movement;
import dev.filmward.pipeline.LayerLook.Point;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks for a change of level in the latest means of a series, and where it leads. The line that is
 * drawn has the change and the rate that were found; its level is the one that then fits the means
 * best by least squares. For one thread.
 */
final class MovementLook {
  /** The time that a look takes grows with the square of it. */
  static final int MEANS = 300;

  private static final Duration HORIZON = Duration.ofHours(24);
  private static final double MS_PER_HOUR = 3_600_000;

  private final MeanSeries means;

  MovementLook(MeanSeries means) {
    this.means = means;
  }

  /**
   * What was found.
   *
   * @param control limits of the means in force, where there are any
   */
  Movement movement(Optional<Band> control, SpecLimits spec) {
    Optional<Change> change = Change.in(means);
    boolean isMoving = change.filter(found -> found.kind() == Change.Kind.RAMP).isPresent();
    return new Movement(
        means.size(),
        change,
        Slope.of(means),
        change.map(this::line).orElse(List.of()),
        isMoving ? meetings(control, spec) : List.of());
  }

  private List<Meeting> meetings(Optional<Band> control, SpecLimits spec) {
    List<Meeting> meetings = new ArrayList<>();
    control.ifPresent(
        band -> {
          meetings.add(meeting(Limit.LOWER_CONTROL, band.lower()));
          meetings.add(meeting(Limit.UPPER_CONTROL, band.upper()));
        });
    add(meetings, Limit.LOWER_SPECIFICATION, spec.lower());
    add(meetings, Limit.UPPER_SPECIFICATION, spec.upper());
    return meetings;
  }

  private void add(List<Meeting> meetings, Limit limit, OptionalDouble um) {
    um.ifPresent(value -> meetings.add(meeting(limit, value)));
  }

  private Meeting meeting(Limit limit, double um) {
    return new Meeting(limit, um, Forecast.of(means, um, HORIZON));
  }

  private List<Point> line(Change change) {
    int n = means.size();
    Instant first = means.at(0);
    Instant last = means.at(n - 1);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += means.mean(i) - moved(change, means.at(i));
    }
    double level = sum / n;
    double end = level + moved(change, last);
    if (change.kind() == Change.Kind.STEP) {
      return List.of(
          new Point(first, level),
          new Point(change.at(), level),
          new Point(change.at(), end),
          new Point(last, end));
    }
    return change.at().isAfter(first)
        ? List.of(new Point(first, level), new Point(change.at(), level), new Point(last, end))
        : List.of(new Point(change.at(), level), new Point(last, end));
  }

  /** How far the level has moved by a moment. */
  private static double moved(Change change, Instant at) {
    double size = change.size().value();
    if (at.isBefore(change.at())) {
      return 0;
    }
    return change.kind() == Change.Kind.STEP
        ? size
        : size * Duration.between(change.at(), at).toMillis() / MS_PER_HOUR;
  }
}
