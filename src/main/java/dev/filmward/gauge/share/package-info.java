/** Takes a gauge's variance and what a chart shows, gives how much of it is the gauge's. */
@NullMarked
package dev.filmward.gauge.share;

import org.jspecify.annotations.NullMarked;
