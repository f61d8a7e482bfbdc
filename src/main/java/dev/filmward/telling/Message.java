package dev.filmward.telling;

import java.util.Optional;

/**
 * What is sent.
 *
 * @param key the same each time that it is sent, so that a receiver knows it again
 * @param subject one line
 * @param body plain text for e-mail, JSON for a webhook
 * @param attachment goes by e-mail only
 */
public record Message(String key, String subject, String body, Optional<Attachment> attachment) {
  public Message {
    if (!key.matches("[A-Za-z0-9-]{1,64}")) {
      throw new IllegalArgumentException("a message's key is of letters, digits and hyphens");
    }
    subject = Plain.line(subject);
  }

  /** Without a file. */
  public Message(String key, String subject, String body) {
    this(key, subject, body, Optional.empty());
  }
}
