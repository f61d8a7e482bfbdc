/** The commands, and the wiring of everything to everything. */
package dev.filmward.cli;
