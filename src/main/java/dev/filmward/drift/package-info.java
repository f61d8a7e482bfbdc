/**
 * Takes the means of a series in time order, gives what moves: autocorrelation, slope, change and
 * forecast, each with an interval that allows for neighbouring samples being alike.
 */
package dev.filmward.drift;
