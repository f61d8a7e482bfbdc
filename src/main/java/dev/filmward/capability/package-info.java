/**
 * Takes readings and a specification, gives indices with confidence, a verdict and the giveaway.
 */
package dev.filmward.capability;
