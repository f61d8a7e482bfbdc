package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmRun.Topic;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What other settings would have made of the alarms of one topic.
 *
 * @param alarms that there were in the period
 */
public record SparedAlarms(Topic topic, int alarms, List<Option> options) {

  /** A setting that could spare alarms. */
  public enum Setting {
    /** An alarm waits until the next sample signals too. */
    ONE_SAMPLE_MORE,
    /** Tests of runs are shown and raise no alarms any more. */
    WITHOUT_RUNS,
    /** A mean more than four sigma off waits for a second look too. */
    WIDER_SECOND_LOOK,
    /** After each alarm its topic is shelved for eight hours. */
    SHELVING,
    /** Limits from the last samples. */
    NEW_LIMITS
  }

  /**
   * One setting.
   *
   * @param of how many alarms there are without it, counted in the same way
   * @param left how many there are with it
   * @param samplesNow average samples until a shift of one sigma is seen by the tests, now
   * @param samplesThen the same with it; both empty where it cannot be computed
   */
  public record Option(
      Setting setting, int of, int left, OptionalDouble samplesNow, OptionalDouble samplesThen) {}

  public SparedAlarms {
    options = List.copyOf(options);
  }
}
