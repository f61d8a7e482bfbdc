package dev.filmward.pipeline;

/**
 * An alarm is handed on to another person.
 *
 * @param to the person
 * @param from who has it, as the person who hands it on believes; empty for nobody
 * @param why may be empty
 */
public record HandingOn(String to, String from, String why, String by) {}
