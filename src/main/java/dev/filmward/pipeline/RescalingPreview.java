package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a re-scaling would do; nothing is changed.
 *
 * @param steps how readings would turn out, by the time from which that holds
 * @param samples that would be worked out again
 * @param left samples without readings, whose figures would stay as they are
 * @param withTemperature of these, how many have a temperature of the film
 * @param means of the layer and the total over these samples
 * @param otherwise versions of limits that would not fit the readings any more, if left
 * @param alarms those of now and those of then over these samples; empty where there are too many
 *     samples to work that out beforehand
 */
public record RescalingPreview(
    List<ScaleStep> steps,
    long samples,
    long left,
    long withTemperature,
    List<Mean> means,
    List<Integer> otherwise,
    Optional<Alarms> alarms) {
  public RescalingPreview {
    steps = List.copyOf(steps);
    means = List.copyOf(means);
    otherwise = List.copyOf(otherwise);
  }

  /** The grand mean of a characteristic, um. */
  public record Mean(Characteristic characteristic, OptionalDouble before, OptionalDouble after) {}

  /** Alarms that limits and tests raise, as if nothing had gone on before the first sample. */
  public record Alarms(List<PastAlarm> before, List<PastAlarm> after) {
    public Alarms {
      before = List.copyOf(before);
      after = List.copyOf(after);
    }
  }
}
