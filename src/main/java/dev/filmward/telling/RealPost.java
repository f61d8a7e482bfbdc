package dev.filmward.telling;

import java.util.Optional;

/** Sends each message by the way that its recipient has. Thread-safe. */
record RealPost(SmtpPost mail, WebhookPost web) implements Post {
  @Override
  public Sent send(
      Message message, Rule.Recipient to, Optional<MailServer> server, Optional<Secret> secret) {
    if (to.address().channel() == Channel.WEBHOOK) {
      return web.send(message, to.address().url(), secret);
    }
    return server
        .map(known -> mail.send(message, to, known, secret))
        .orElseGet(() -> Sent.noWay("no mail server is set up yet"));
  }
}
