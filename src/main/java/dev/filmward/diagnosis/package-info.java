/** Takes the shape of a deviation, gives what may have caused it and what to look at first. */
package dev.filmward.diagnosis;
