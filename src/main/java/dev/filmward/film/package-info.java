/**
 * The vocabulary: what a film is made of and what a gauge reads of it, as immutable values. Lengths
 * are in micrometres unless a name says otherwise. Imports nothing of ours.
 */
package dev.filmward.film;
