package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.FactorDesk.TurnedOn;
import dev.filmward.access.OneTimeKey;
import dev.filmward.people.Person;
import dev.filmward.store.PersonTable.SignedIn;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;

/** The second factor: one's own, and for administrators that of somebody who lost the phone. */
final class FactorResource {
  private final Reception reception;
  private final Welcome welcome;
  private final PeopleJson json;

  FactorResource(Reception reception, Welcome welcome, PeopleJson json) {
    this.reception = reception;
    this.welcome = welcome;
    this.json = json;
  }

  void offer(Context ctx) throws IOException {
    Person person = welcome.signedIn(ctx);
    welcome.prove(ctx, person, Requests.secret(Requests.body(ctx), "current"));
    OneTimeKey key = reception.factors().offer(person);
    ctx.json(Wire.object().put("key", key.letters()).put("address", key.address(person.name())));
  }

  void turnOn(Context ctx) throws IOException {
    Person person = welcome.signedIn(ctx);
    Optional<SignedIn> earlier = welcome.earlier(ctx);
    String code = Requests.field(Requests.body(ctx), "code");
    TurnedOn done = reception.factors().turnOn(person, code);
    ObjectNode answer = welcome.letGoOn(ctx, done.person(), earlier);
    ArrayNode codes = answer.putArray("recoveryCodes");
    done.recoveryCodes().forEach(codes::add);
    ctx.json(answer);
  }

  void turnOff(Context ctx) throws IOException {
    Person person = welcome.signedIn(ctx);
    Optional<SignedIn> earlier = welcome.earlier(ctx);
    JsonNode body = Requests.body(ctx);
    welcome.prove(ctx, person, Requests.secret(body, "current"));
    Person changed = reception.factors().end(person.id(), person.name());
    ctx.json(welcome.letGoOn(ctx, changed, earlier));
  }

  /** For somebody else. */
  void takeAway(Context ctx) {
    Person person = reception.factors().end(Requests.id(ctx), Requests.by(ctx));
    reception.events().recheck();
    ctx.json(json.person(person));
  }
}
