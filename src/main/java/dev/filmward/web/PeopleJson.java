package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.people.Permission;
import dev.filmward.people.Person;
import dev.filmward.people.Token;
import java.time.ZoneId;

/** People and tokens on the wire; nothing of passwords and secrets. */
final class PeopleJson {
  private final ZoneId zone;

  PeopleJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode person(Person person) {
    return Wire.object()
        .put("id", person.id())
        .put("name", person.name())
        .put("role", person.role().word())
        .put("standing", person.standing().word())
        .put("secondFactor", person.hasSecondFactor())
        .put("addedAt", Wire.time(person.addedAt(), zone));
  }

  ObjectNode token(Token token) {
    ObjectNode node =
        Wire.object()
            .put("id", token.id())
            .put("name", token.name())
            .put("addedBy", token.addedBy())
            .put("addedAt", Wire.time(token.addedAt(), zone))
            .put("endsAt", Wire.time(token.endsAt(), zone))
            .put("lastDay", lastDay(token))
            .put("revokedAt", token.revokedAt().map(at -> Wire.time(at, zone)).orElse(null));
    ArrayNode scope = node.putArray("scope");
    token.scope().stream().map(Permission::word).sorted().forEach(scope::add);
    return node;
  }

  /** A token ends with a day in the plant. */
  private String lastDay(Token token) {
    return token.endsAt().minusNanos(1).atZone(zone).toLocalDate().toString();
  }
}
