/**
 * Takes what is known of velocity, temperature, timing and couplant, gives the uncertainty of a
 * layer's thickness and where it comes from (JCGM 100:2008, the GUM).
 */
@NullMarked
package dev.filmward.gauge.uncertainty;

import org.jspecify.annotations.NullMarked;
