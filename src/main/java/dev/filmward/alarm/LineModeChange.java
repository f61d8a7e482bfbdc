package dev.filmward.alarm;

import dev.filmward.chart.LimitsVersion.Decision;
import java.time.Instant;

/**
 * A person says what a line is doing, from a moment on.
 *
 * @param samples after how many samples {@link LineMode#STARTING} and {@link
 *     LineMode#CHANGING_OVER} end by themselves; 0: only when somebody says so
 */
public record LineModeChange(
    String line, LineMode mode, Instant since, int samples, Decision decision) {
  /** Common practice, no source: what is made until then is scrap on most lines. */
  public static final int USUAL_SAMPLES = 3;

  /** So many are looked back for. */
  public static final int MOST_SAMPLES = 50;

  public LineModeChange {
    if (line.isBlank()) {
      throw new IllegalArgumentException("which line? Give its name");
    }
    if (!(samples >= 0 && samples <= MOST_SAMPLES)) {
      throw new IllegalArgumentException(
          "a start ends after 0 to " + MOST_SAMPLES + " samples, not " + samples);
    }
  }
}
