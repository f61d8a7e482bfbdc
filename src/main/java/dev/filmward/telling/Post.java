package dev.filmward.telling;

import java.util.Optional;

/** Sends messages. Thread-safe. */
public interface Post {

  /**
   * Tries once; does not throw for what the world did.
   *
   * @param secret the mail server's password, or what a webhook's messages are signed with
   */
  Sent send(Message message, Rule.Recipient to, Optional<MailServer> mail, Optional<Secret> secret);

  /** By real mail servers and web addresses. */
  static Post real() {
    return new RealPost(new SmtpPost(Optional.empty()), new WebhookPost());
  }
}
