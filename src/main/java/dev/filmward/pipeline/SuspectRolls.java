package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Span;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The rolls made since the last good sample before an alarm, to the end of its excursion.
 *
 * @param lastGood empty where no sample before the alarm was good; then all rolls since the first
 *     sample are there
 * @param isOver whether the excursion has ended; else the span reaches to the newest sample
 * @param rolls in the order in which they were made
 */
public record SuspectRolls(
    Optional<GoodSample> lastGood, Span span, boolean isOver, List<SuspectRoll> rolls) {

  /** A sample at which nothing signalled and nothing was out of specification. */
  public record GoodSample(SampleKey key, Instant takenAt) {}
}
