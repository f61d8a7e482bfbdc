/**
 * Takes numbers, gives numbers: accumulators that merge and the constants of control charts. Knows
 * nothing of films. The only package that may import Commons Math.
 */
package dev.filmward.stats;
