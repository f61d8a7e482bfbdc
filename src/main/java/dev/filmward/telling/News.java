package dev.filmward.telling;

import java.time.Instant;

/**
 * Something to tell of an alarm.
 *
 * @param told in words where the happening alone does not say it; may be empty
 * @param at when the server saw it
 */
public record News(Happening happening, AlarmFacts alarm, String told, Instant at) {}
