/**
 * Known pieces and how a gauge read them, to velocity and zero offset with their uncertainty; and
 * readings as exported, to readings as they are with another velocity.
 */
@NullMarked
package dev.filmward.gauge.calibration;

import org.jspecify.annotations.NullMarked;
