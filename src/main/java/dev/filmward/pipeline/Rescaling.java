package dev.filmward.pipeline;

import dev.filmward.gauge.calibration.Scaling.Word;
import java.time.Instant;

/**
 * What a person wants re-scaled.
 *
 * @param calibrationId the calibration whose velocity the readings are to have
 * @param position of the reported layer, from 1
 * @param from samples taken from then on are re-scaled
 * @param temperature whether readings are corrected by the temperature of their film as well
 */
public record Rescaling(
    String line,
    String structure,
    int position,
    long calibrationId,
    Instant from,
    Temperature temperature,
    LimitsToo limits,
    Word word) {
  /** What the temperature of the film does to its readings. */
  public enum Temperature {
    /** Readings are corrected by it, after the model of the calibration. */
    CORRECTS,
    /** Nothing. */
    LEFT_OUT
  }

  /** What happens to the limits that were computed of readings at another velocity. */
  public enum LimitsToo {
    /** They get a new version that is moved by the same factor. */
    CARRY,
    /** They stay, and are flagged. */
    FLAG;

    /** As written in addresses. */
    public String word() {
      return this == CARRY ? "carry" : "flag";
    }

    /** What {@link #word} gave. */
    public static LimitsToo fromWord(String word) {
      for (LimitsToo each : values()) {
        if (each.word().equals(word)) {
          return each;
        }
      }
      throw new IllegalArgumentException(
          "\"limits\" is \"carry\" (along) or \"flag\" (and leave), not \"" + word + "\"");
    }
  }
}
