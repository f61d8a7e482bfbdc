/**
 * Takes the beginning of a file with headings of its own, gives a proposed mapping with reasons,
 * and questions where only a person can know. Guesses nothing that would change a value.
 */
package dev.filmward.intake.recognition;
