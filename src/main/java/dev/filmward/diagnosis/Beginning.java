package dev.filmward.diagnosis;

import dev.filmward.drift.Change;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.Sample;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * When a change of level began: as {@link Change} tells from the one series in which it is seen
 * most clearly, where that finds the same kind of change near it; else all beginnings whose
 * likelihood is near the best.
 */
final class Beginning {
  private static final int NEAR = 12;

  private final List<Sample> samples;
  private final LevelChange change;

  Beginning(List<Sample> samples, LevelChange change) {
    this.samples = samples;
    this.change = change;
  }

  Since of(double[] seen) {
    MeanSeries means = new MeanSeries(seen.length);
    for (int t = 0; t < seen.length; t++) {
      means.add(samples.get(t).takenAt(), seen[t]);
    }
    Optional<Change> found =
        change.course.isStep() || change.course.kind() == Course.Kind.DRIFT
            ? Change.in(means)
            : Optional.empty();
    return found
        .filter(is -> (is.kind() == Change.Kind.STEP) == change.course.isStep())
        .filter(is -> isNear(is.at()))
        .map(is -> new Since(is.at(), is.notBefore(), is.notAfter()))
        .orElseGet(this::own);
  }

  private boolean isNear(Instant at) {
    int first = Math.max(0, change.course.from() - NEAR);
    int last = Math.min(samples.size() - 1, change.course.from() + NEAR);
    return !at.isBefore(samples.get(first).takenAt()) && !at.isAfter(samples.get(last).takenAt());
  }

  private Since own() {
    int from = change.course.from();
    int first = from;
    int last = from;
    while (change.choice.mayBeginAt(first - 1)) {
      first--;
    }
    while (change.choice.mayBeginAt(last + 1)) {
      last++;
    }
    return new Since(at(from), Optional.of(at(first - 1)), at(last));
  }

  private Instant at(int sample) {
    return samples.get(sample).takenAt();
  }
}
