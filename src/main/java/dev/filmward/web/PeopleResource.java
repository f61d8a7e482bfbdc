package dev.filmward.web;

import static dev.filmward.people.Permission.TEND_ALARMS;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.PeopleDesk.Invited;
import dev.filmward.people.Person;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import io.javalin.http.Context;
import java.io.IOException;

/** Accounts, for administrators. What a person loses is lost at once, open pages too. */
final class PeopleResource {
  private final Reception reception;
  private final PeopleJson json;

  PeopleResource(Reception reception, PeopleJson json) {
    this.reception = reception;
    this.json = json;
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode people = answer.putArray("people");
    reception.people().all().forEach(person -> people.add(json.person(person)));
    ArrayNode roles = answer.putArray("roles");
    for (Role role : Role.values()) {
      roles.add(role.word());
    }
    ctx.json(answer);
  }

  /** Names of those who may take an alarm on, for whoever hands one on. */
  void colleagues(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode names = answer.putArray("names");
    reception.people().all().stream()
        .filter(
            person ->
                person.standing() == Person.Standing.ACTIVE && TEND_ALARMS.isGivenTo(person.role()))
        .map(Person::name)
        .sorted()
        .forEach(names::add);
    ctx.json(answer);
  }

  void add(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    PersonName name = new PersonName(Requests.field(body, "name"));
    answer(ctx, reception.people().add(name, role(body), Requests.by(ctx)));
  }

  void give(Context ctx) throws IOException {
    Role role = role(Requests.body(ctx));
    ObjectNode person =
        json.person(reception.people().give(Requests.id(ctx), role, Requests.by(ctx)));
    reception.events().recheck();
    ctx.json(person);
  }

  void disable(Context ctx) {
    ObjectNode person = json.person(reception.people().disable(Requests.id(ctx), Requests.by(ctx)));
    reception.events().recheck();
    ctx.json(person);
  }

  void reset(Context ctx) {
    Invited invited = reception.people().reset(Requests.id(ctx), Requests.by(ctx));
    reception.events().recheck();
    answer(ctx, invited);
  }

  private void answer(Context ctx, Invited invited) {
    ctx.json(json.person(invited.person()).put("oneTimePassword", invited.oneTimePassword()));
  }

  private static Role role(JsonNode body) {
    return Role.fromWord(Requests.field(body, "role"));
  }
}
