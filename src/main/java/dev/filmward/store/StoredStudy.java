package dev.filmward.store;

import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyStep;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A gauge study as it is kept. Immutable.
 *
 * @param ending how it ended; empty while readings may be entered
 */
public record StoredStudy(
    long id, StudyPlan plan, String plannedBy, Instant plannedAt, Optional<Ending> ending) {

  /** How a study ends. */
  public enum End {
    FINISHED,
    ABANDONED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * That a person ended it.
   *
   * @param words the conclusion, or why it was given up
   */
  public record Ending(End end, String by, Instant at, String words) {
    public Ending {
      if (words.isBlank()) {
        throw new IllegalArgumentException("write what the study came to, or why it is given up");
      }
    }
  }

  /**
   * One reading of one layer.
   *
   * @param um above 0
   * @param why it takes the place of another one; empty where it is the first
   */
  public record Entry(StudyStep step, String layer, double um, String by, Instant at, String why) {
    public Entry {
      if (!(um > 0) || !Double.isFinite(um)) {
        throw new IllegalArgumentException("a thickness is above zero and finite, not " + um);
      }
    }
  }
}
