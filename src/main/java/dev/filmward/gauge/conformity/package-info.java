/**
 * Takes a specification and the uncertainty of a value, gives what may be said of conformity:
 * limits with guard bands, zones, and the risk of saying it wrongly (JCGM 106, ISO 14253-1,
 * ILAC-G8).
 */
@NullMarked
package dev.filmward.gauge.conformity;

import org.jspecify.annotations.NullMarked;
