package dev.filmward.store;

import java.time.Instant;

/**
 * A change that a person made.
 *
 * <p>Texts are kept without NUL, which not every database takes.
 *
 * @param at to the microsecond; finer parts are not kept
 * @param by the person's name
 * @param action what was done, as a word: acknowledge, explain, limits, structures, and so on
 * @param subject what it was done to
 * @param detail the values given, in words
 */
public record AuditEntry(Instant at, String by, String action, String subject, String detail) {

  public AuditEntry {
    if (by.isBlank() || action.isBlank()) {
      throw new IllegalArgumentException("who did what? The audit chain keeps both");
    }
    by = Nul.shown(by);
    action = Nul.shown(action);
    subject = Nul.shown(subject);
    detail = Nul.shown(detail);
    at = Times.toInstant(Times.toMicros(at));
  }
}
