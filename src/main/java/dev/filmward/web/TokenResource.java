package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.TokenDesk.Made;
import dev.filmward.people.Permission;
import dev.filmward.people.PersonName;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.HashSet;
import java.util.Set;

/** Tokens of machines, for administrators. */
final class TokenResource {
  private final Reception reception;
  private final ZoneId zone;
  private final PeopleJson json;

  TokenResource(Reception reception, ZoneId zone) {
    this.reception = reception;
    this.zone = zone;
    this.json = new PeopleJson(zone);
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode tokens = answer.putArray("tokens");
    reception.tokens().all().forEach(token -> tokens.add(json.token(token)));
    ctx.json(answer);
  }

  void add(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    PersonName name = new PersonName(Requests.field(body, "name"));
    Set<Permission> scope = new HashSet<>();
    body.path("scope").forEach(word -> scope.add(Permission.fromWord(word.asText())));
    Made made =
        reception
            .tokens()
            .add(name, scope, endOf(Requests.field(body, "lastDay")), Requests.by(ctx));
    ctx.json(json.token(made.token()).put("secret", made.secret().text()));
  }

  void revoke(Context ctx) {
    reception.tokens().revoke(Requests.id(ctx), Requests.by(ctx));
    reception.events().recheck();
    list(ctx);
  }

  /** The end of a day in the plant. */
  private Instant endOf(String day) {
    try {
      return LocalDate.parse(day).plusDays(1).atStartOfDay(zone).toInstant();
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "\"lastDay\" is a day such as 2027-06-30, not \"" + day + "\"", e);
    }
  }
}
