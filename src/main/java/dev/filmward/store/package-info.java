/**
 * Keeps everything: structures, samples with their subgroup figures, limits, signals, alarms. A
 * border: talks to the database and to nothing else.
 */
package dev.filmward.store;
