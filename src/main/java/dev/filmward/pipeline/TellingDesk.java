package dev.filmward.pipeline;

import dev.filmward.alarm.Priority;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Tables;
import dev.filmward.telling.Address;
import dev.filmward.telling.Channel;
import dev.filmward.telling.Decided;
import dev.filmward.telling.Happening;
import dev.filmward.telling.InWords;
import dev.filmward.telling.MailServer;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.Post;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.SecretChange;
import dev.filmward.telling.Sent;
import dev.filmward.telling.Settings;
import dev.filmward.telling.SettingsVersion;
import dev.filmward.telling.Wording;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Where an administrator says who is told of what, and how; each change is kept with who, why and
 * what it was before, in one transaction. Thread-safe.
 */
public final class TellingDesk {
  private static final String ACTION = "telling";
  private static final int MOST_RULES = 200;

  private final Plant plant;
  private final Post post;
  private final Passwords passwords;

  public TellingDesk(Plant plant, Post post, Passwords passwords) {
    this.plant = plant;
    this.post = post;
    this.passwords = passwords;
  }

  /** A rule, and whether its messages are signed. */
  public record RuleLook(RuleVersion version, Signing signing) {
    /** Whether a secret is kept for it. */
    public enum Signing {
      SIGNED,
      NOT_SIGNED
    }
  }

  /** The settings, and where the mail server's password is. */
  public record SettingsLook(SettingsVersion version, Passwords.Kept password) {}

  public List<RuleLook> rules() {
    return plant
        .store()
        .read(
            tables ->
                tables.telling().rules().stream().map(version -> look(tables, version)).toList());
  }

  private static RuleLook look(Tables tables, RuleVersion version) {
    boolean signed = tables.telling().secret(Passwords.ofWebhook(version.rule().id())).isPresent();
    return new RuleLook(version, signed ? RuleLook.Signing.SIGNED : RuleLook.Signing.NOT_SIGNED);
  }

  /**
   * Keeps a rule, a new one where it has no id, with what is done to its secret.
   *
   * @throws NoSuchElementException if there is no rule with that id
   */
  public RuleLook keep(RuleVersion asked, SecretChange secret) {
    return plant
        .store()
        .write(
            tables -> {
              Optional<RuleVersion> before = before(tables, asked);
              RuleVersion kept = tables.telling().keep(asked);
              tables
                  .telling()
                  .change(Passwords.ofWebhook(kept.rule().id()), afterwards(kept, secret));
              tables.audit().add(audited(before, kept, secret));
              return look(tables, kept);
            });
  }

  private static Optional<RuleVersion> before(Tables tables, RuleVersion asked) {
    long id = asked.rule().id();
    if (id == 0) {
      if (tables.telling().rules().size() >= MOST_RULES) {
        throw new IllegalStateException("there are " + MOST_RULES + " rules; remove one first");
      }
      return Optional.empty();
    }
    return Optional.of(
        tables.telling().rule(id).orElseThrow(() -> new NoSuchElementException("no rule " + id)));
  }

  /** A rule that is no webhook any more, or is removed, keeps no secret. */
  private static SecretChange afterwards(RuleVersion kept, SecretChange secret) {
    boolean needsNone =
        kept.state() == RuleVersion.State.REMOVED
            || kept.rule().recipient().address().channel() == Channel.EMAIL;
    return needsNone ? SecretChange.FORGET : secret;
  }

  private static AuditEntry audited(
      Optional<RuleVersion> before, RuleVersion kept, SecretChange secret) {
    return new AuditEntry(
        kept.decided().at(),
        kept.decided().by(),
        ACTION,
        "rule " + kept.rule().id() + ", version " + kept.version(),
        detail(before.map(InWords::of), InWords.of(kept), secret) + kept.decided().reason());
  }

  public SettingsLook settings() {
    return plant
        .store()
        .read(
            tables -> new SettingsLook(tables.telling().settings(), passwords.mailIsKept(tables)));
  }

  /**
   * Keeps settings, with what is done to the mail server's password. A password that is kept is
   * forgotten where the server it was for becomes another one, so that nobody can have it sent to a
   * server of their own.
   */
  public SettingsLook keep(Settings asked, Decided decided, SecretChange password) {
    plant
        .store()
        .change(
            tables -> {
              SettingsVersion before = tables.telling().settings();
              SecretChange change = forServer(before.settings().mail(), asked.mail(), password);
              tables
                  .telling()
                  .keep(new SettingsVersion(asked, before.version() + 1, Optional.of(decided)));
              tables.telling().change(Passwords.MAIL, change);
              tables
                  .audit()
                  .add(
                      new AuditEntry(
                          decided.at(),
                          decided.by(),
                          ACTION,
                          "settings, version " + (before.version() + 1),
                          detail(
                                  Optional.of(InWords.of(before.settings())),
                                  InWords.of(asked),
                                  change)
                              + decided.reason()));
            });
    return settings();
  }

  private static SecretChange forServer(
      Optional<MailServer> before, Optional<MailServer> after, SecretChange password) {
    boolean isSame = before.map(TellingDesk::door).equals(after.map(TellingDesk::door));
    return password.what() == SecretChange.What.KEEP && !isSame ? SecretChange.FORGET : password;
  }

  private static List<Object> door(MailServer server) {
    return List.of(server.host(), server.port(), server.security(), server.user());
  }

  private static String detail(Optional<String> before, String after, SecretChange secret) {
    String words =
        switch (secret.what()) {
          case KEEP -> "";
          case FORGET -> "password taken away\n";
          case SET -> "password set\n";
        };
    return before.map(was -> "before: " + was + "\n").orElse("") + "now: " + after + "\n" + words;
  }

  /**
   * Sends a test message by a rule's way, at once; the answer says what the other side said.
   *
   * @throws NoSuchElementException if there is no such rule
   */
  public Sent test(long ruleId, String by) {
    Rule rule =
        plant
            .store()
            .read(tables -> tables.telling().rule(ruleId))
            .map(RuleVersion::rule)
            .orElseThrow(() -> new NoSuchElementException("no rule " + ruleId));
    return test(rule, by);
  }

  /** Sends a test message to an e-mail address, whoever is told of alarms. */
  public Sent test(Address email, String by) {
    Rule.Scope nothing = new Rule.Scope(Set.of(), Priority.HIGH, Set.of(Happening.OPENED));
    return test(
        new Rule(0, new Rule.Recipient("test", email, Optional.empty()), nothing, QuietRules.NONE),
        by);
  }

  private Sent test(Rule rule, String by) {
    var now = plant.clock().instant();
    Address address = rule.recipient().address();
    Sent sent =
        passwords
            .with(plant.store(), rule)
            .send(
                post,
                new Wording(plant.zone())
                    .test(address.channel(), UUID.randomUUID().toString(), now));
    plant
        .store()
        .change(
            tables ->
                tables
                    .audit()
                    .add(
                        new AuditEntry(
                            now, by, ACTION, "test to " + address.text(), sent.words())));
    return sent;
  }

  /** Messages, newest first. */
  public List<OutboxEntry> outbox(int most) {
    return plant.store().read(tables -> tables.outbox().newest(most));
  }
}
