package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SampleKey;
import dev.filmward.rule.Signal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a baseline would give, beside what is in force, for a person to decide.
 *
 * @param underCurrent alarms that the limits in force would have raised on all that is stored
 * @param underProposed alarms that the proposed limits would have raised on the same
 */
public record LimitsProposal(
    List<Proposed> characteristics, List<PastAlarm> underCurrent, List<PastAlarm> underProposed) {
  public LimitsProposal {
    characteristics = List.copyOf(characteristics);
    underCurrent = List.copyOf(underCurrent);
    underProposed = List.copyOf(underProposed);
  }

  /**
   * One characteristic.
   *
   * @param proposed empty where there are too few subgroups
   * @param pointsToLookAt subgroups of the baseline that signal under its own limits
   * @param warnings what speaks against relying on these limits, in words
   * @param trust how alike neighbouring samples are, where that can be told
   */
  public record Proposed(
      Characteristic characteristic,
      Optional<LimitsVersion> current,
      Optional<MeanRangeLimits> proposed,
      long subgroups,
      long excluded,
      List<PointToLookAt> pointsToLookAt,
      List<String> warnings,
      Optional<BaselineTrust> trust) {
    public Proposed {
      pointsToLookAt = List.copyOf(pointsToLookAt);
      warnings = List.copyOf(warnings);
    }
  }

  /** A subgroup that should not stay in a baseline without a look. */
  public record PointToLookAt(SampleKey sample, Instant takenAt, List<Signal> signals) {}

  /** An alarm that limits would have raised. */
  public record PastAlarm(String title, SampleKey first, Instant openedAt) {}
}
