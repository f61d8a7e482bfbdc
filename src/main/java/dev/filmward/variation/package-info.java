/**
 * Takes the readings of whole samples, gives where their variation is: along, across, or neither.
 */
package dev.filmward.variation;
