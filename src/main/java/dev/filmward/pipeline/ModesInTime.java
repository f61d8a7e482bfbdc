package dev.filmward.pipeline;

import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.alarm.LineModes;
import dev.filmward.alarm.LineMoment;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a line was doing when the samples of one production were taken: what people said, and
 * changing over for the first samples after it made something else, unless somebody said since that
 * it runs. Asked in time order. For one thread.
 */
final class ModesInTime {
  private final LineModes said;
  private final List<Instant> own;
  private final List<Instant> others;
  private int passed;

  /**
   * Begins at a moment.
   *
   * @param own when its latest samples before that were taken, in time order
   * @param others when the line's samples of anything else were taken, in time order
   */
  ModesInTime(LineModes said, List<Instant> own, List<Instant> others) {
    this.said = said;
    this.own = new ArrayList<>(own);
    this.others = others;
  }

  /** For what is stored, from a moment on. */
  static ModesInTime since(Tables tables, Production production, Instant moment) {
    String line = production.line();
    String structure = production.structure().code();
    return new ModesInTime(
        tables.lineModes().of(line),
        tables.samples().timesBefore(line, structure, moment, LineModeChange.MOST_SAMPLES),
        tables.samples().timesOfOthers(line, structure, moment));
  }

  /** At the next sample. */
  LineMoment at(Instant takenAt) {
    while (passed < others.size() && others.get(passed).isBefore(takenAt)) {
      passed++;
    }
    LineMode mode =
        said.at(takenAt).flatMap(change -> said(change, takenAt)).orElse(LineMode.RUNNING);
    Optional<Instant> elseAt = passed == 0 ? Optional.empty() : Optional.of(others.get(passed - 1));
    boolean changesOver =
        !mode.suppresses() && elseAt.filter(moment -> changesOver(moment, takenAt)).isPresent();
    own.add(takenAt);
    return new LineMoment(changesOver ? LineMode.CHANGING_OVER : mode, elseAt);
  }

  private Optional<LineMode> said(LineModeChange change, Instant takenAt) {
    boolean passes = change.mode().passes() && change.samples() > 0;
    return passes && own(change.since(), takenAt) >= change.samples()
        ? Optional.empty()
        : Optional.of(change.mode());
  }

  private boolean changesOver(Instant changed, Instant takenAt) {
    boolean saidSince =
        said.at(takenAt).filter(change -> change.since().isAfter(changed)).isPresent();
    return !saidSince && own(changed, takenAt) < LineModeChange.USUAL_SAMPLES;
  }

  private int own(Instant from, Instant to) {
    int count = 0;
    for (int i = own.size() - 1; i >= 0 && !own.get(i).isBefore(from); i--) {
      if (own.get(i).isBefore(to)) {
        count++;
      }
      if (count >= LineModeChange.MOST_SAMPLES) {
        return count;
      }
    }
    return count;
  }
}
