package dev.filmward.access;

import dev.filmward.people.Permission;
import dev.filmward.people.Person;
import dev.filmward.people.Token;
import dev.filmward.store.AuditEntry;
import java.time.Instant;
import java.util.stream.Collectors;

/** What is done about accounts, tokens and sign-ins, as entries of the audit chain; no secrets. */
final class AccessAudit {
  /** Who acts where Filmward notes something by itself. */
  static final String SYSTEM = "Filmward";

  private AccessAudit() {}

  static AuditEntry account(Deed deed, Person person, String what) {
    return new AuditEntry(deed.at(), deed.by(), "account", person.name(), what);
  }

  /** Who does it, and when. */
  record Deed(String by, Instant at) {}

  static AuditEntry tokenAdded(Token token) {
    String scope =
        token.scope().stream().map(Permission::word).sorted().collect(Collectors.joining(", "));
    return new AuditEntry(
        token.addedAt(),
        token.addedBy(),
        "token",
        token.name(),
        "added for " + scope + ", until " + token.endsAt());
  }

  static AuditEntry tokenRevoked(Deed deed, Token token) {
    return new AuditEntry(deed.at(), deed.by(), "token", token.name(), "revoked");
  }

  /** Names that nobody has are not kept: people type their password into the wrong field. */
  static AuditEntry failures(Instant at, String subject, int inARow) {
    return new AuditEntry(at, SYSTEM, "sign-in", subject, inARow + " failures in a row");
  }
}
