/** Takes a calendar and a moment, gives the shift. */
package dev.filmward.shift;
