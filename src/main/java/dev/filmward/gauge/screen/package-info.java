/**
 * Takes a sample as the gauge exported it, the structure and the recent samples, gives flags where
 * the readings look misread. All comparisons are of times of flight, which a gauge conserves.
 */
@NullMarked
package dev.filmward.gauge.screen;

import org.jspecify.annotations.NullMarked;
