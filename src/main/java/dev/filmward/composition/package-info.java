/**
 * Takes all layers together, gives their distance from what is usual and the layers behind it.
 * Layers and total together say the same thing twice, so it is the total and the ratios of layers
 * that are looked at.
 */
package dev.filmward.composition;
