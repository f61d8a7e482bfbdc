package dev.filmward.pipeline;

import dev.filmward.alarm.RollKey;
import java.time.Instant;

/**
 * A roll on which film lies that was made after the last good sample.
 *
 * @param firstAt its first sample in the span, the last good one too
 * @param samples those after the last good one
 * @param readings measured in these samples, of layers and the total; 0 where they were thinned
 * @param outOfSpec how many of these lie outside the individual specification
 * @param averagesOutOfSpec means of layers or the total outside the average specification
 * @param heldOut samples that were misread, whose readings are not counted
 * @param thinned samples whose readings were taken away, so that nothing can be counted
 */
public record SuspectRoll(
    RollKey roll,
    Instant firstAt,
    Instant lastAt,
    int samples,
    int readings,
    int outOfSpec,
    int averagesOutOfSpec,
    int heldOut,
    int thinned) {}
