/**
 * What a gauge's readings are worth: calibrations and re-scaling, screening of misread samples,
 * gauge studies, uncertainty, and what an echo can tell apart. Nothing here touches files, clocks,
 * threads or the network.
 */
@NullMarked
package dev.filmward.gauge;

import org.jspecify.annotations.NullMarked;
