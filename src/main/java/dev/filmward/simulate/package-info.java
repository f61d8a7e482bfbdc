/**
 * A seeded story gives readings: the demo's gauge and the tests' scenarios. The same story gives
 * the same samples and the same bytes on every JDK. Imports the vocabulary only.
 */
package dev.filmward.simulate;
