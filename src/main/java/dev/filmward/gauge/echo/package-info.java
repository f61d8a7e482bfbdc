/**
 * Takes a structure, a gauge and what is around the film, gives the echoes to expect: when they
 * come, how strong, of which sign, and which of them the gauge can tell apart. Guidance from the
 * physics of plane waves, not a promise.
 */
@NullMarked
package dev.filmward.gauge.echo;

import org.jspecify.annotations.NullMarked;
