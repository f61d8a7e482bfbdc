package dev.filmward.pipeline;

import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import dev.filmward.telling.Channel;
import dev.filmward.telling.MailServer;
import dev.filmward.telling.Message;
import dev.filmward.telling.Post;
import dev.filmward.telling.Rule;
import dev.filmward.telling.Secret;
import dev.filmward.telling.Sent;
import java.util.Map;
import java.util.Optional;

/**
 * Where passwords are: that of the mail server in the environment or, where it is not there, in the
 * database; what a webhook's messages are signed with in the database. Immutable.
 */
public final class Passwords {
  /** The variable of the environment that holds the mail server's password. */
  public static final String VARIABLE = "FILMWARD_SMTP_PASSWORD";

  static final String MAIL = "mail";

  private final Optional<Secret> fromEnvironment;

  /**
   * @param environment variables of the process, by name
   */
  public Passwords(Map<String, String> environment) {
    this.fromEnvironment =
        Optional.ofNullable(environment.get(VARIABLE))
            .filter(value -> !value.isEmpty())
            .map(Secret::new);
  }

  /** Where the mail server's password is. */
  public enum Kept {
    NOWHERE,
    IN_THE_DATABASE,
    IN_THE_ENVIRONMENT
  }

  static String ofWebhook(long ruleId) {
    return "webhook " + ruleId;
  }

  Kept mailIsKept(Tables tables) {
    if (fromEnvironment.isPresent()) {
      return Kept.IN_THE_ENVIRONMENT;
    }
    return tables.telling().secret(MAIL).isPresent() ? Kept.IN_THE_DATABASE : Kept.NOWHERE;
  }

  /** The mail server's password. */
  public Optional<Secret> ofMail(Tables tables) {
    return fromEnvironment.or(() -> tables.telling().secret(MAIL));
  }

  /** A way to one recipient, with all that it needs. */
  Way with(Store store, Rule rule) {
    return store.read(
        tables -> {
          boolean isMail = rule.recipient().address().channel() == Channel.EMAIL;
          Optional<Secret> secret =
              isMail ? ofMail(tables) : tables.telling().secret(ofWebhook(rule.id()));
          return new Way(rule.recipient(), tables.telling().settings().settings().mail(), secret);
        });
  }

  /** A way to one recipient. */
  record Way(Rule.Recipient to, Optional<MailServer> mail, Optional<Secret> secret) {
    Sent send(Post post, Message message) {
      return post.send(message, to, mail, secret);
    }
  }
}
