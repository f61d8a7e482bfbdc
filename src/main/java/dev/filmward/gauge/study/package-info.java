/**
 * Readings of the same places by several people, or of pieces whose thickness is known -> how far
 * the gauge can be believed, for each layer by itself. Thicknesses in um.
 */
@NullMarked
package dev.filmward.gauge.study;

import org.jspecify.annotations.NullMarked;
