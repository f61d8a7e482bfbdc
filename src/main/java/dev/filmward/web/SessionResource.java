package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.SignIn.Attempt;
import dev.filmward.people.Actor;
import dev.filmward.people.Person;
import dev.filmward.store.PersonTable.SignedIn;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Signing in and out, the own password, and who is there. */
final class SessionResource {
  private final Reception reception;
  private final Welcome welcome;
  private final List<String> guests;

  SessionResource(Reception reception, Welcome welcome, List<String> guests) {
    this.reception = reception;
    this.welcome = welcome;
    this.guests = guests;
  }

  /** A page asks this when a person opens or touches it, so that it counts as doing something. */
  void me(Context ctx) {
    Optional<Person> person = reception.gate().person(ctx);
    SessionCookie.of(ctx).ifPresent(reception.sessions()::touch);
    ObjectNode answer = me(ctx, person);
    ArrayNode names = answer.putArray("guests");
    for (String guest : guests) {
      reception
          .people()
          .named(guest)
          .ifPresent(
              one -> names.addObject().put("name", one.name()).put("role", one.role().word()));
    }
    ctx.json(answer);
  }

  private ObjectNode me(Context ctx, Optional<Person> person) {
    return welcome.me(Gate.actor(ctx), person, person.flatMap(one -> welcome.earlier(ctx)));
  }

  /** Without a code first; whoever has a second factor is told then that one is wanted. */
  void signIn(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String name = Requests.field(body, "name");
    String password = Requests.secret(body, "password");
    String code = Requests.fieldOr(body, "code", "");
    Optional<String> given = code.isEmpty() ? Optional.empty() : Optional.of(code);
    Attempt attempt = new Attempt(name, password, given, Seen.in(ctx).address());
    ctx.json(welcome.letIn(ctx, welcome.check(ctx, attempt)));
  }

  /** In a demonstration a person's name is enough. */
  void beGuest(Context ctx) throws IOException {
    String name = Requests.field(Requests.body(ctx), "name");
    Person person =
        guests.stream()
            .filter(name::equals)
            .findFirst()
            .flatMap(reception.people()::named)
            .filter(found -> !found.isDisabled())
            .orElseThrow(() -> Gate.notSignedIn("there is nobody of that name to be"));
    ctx.json(welcome.letIn(ctx, person));
  }

  void signOut(Context ctx) {
    SessionCookie.of(ctx).ifPresent(reception.sessions()::end);
    leave(ctx);
  }

  void signOutEverywhere(Context ctx) {
    reception.sessions().endAllOf(welcome.signedIn(ctx));
    leave(ctx);
  }

  void choosePassword(Context ctx) throws IOException {
    Person person = welcome.signedIn(ctx);
    JsonNode body = Requests.body(ctx);
    String chosen = Requests.secret(body, "new");
    String current = Requests.secret(body, "current");
    if (chosen.equals(current)) {
      throw new IllegalArgumentException("the new password is the old one; take another one");
    }
    welcome.prove(ctx, person, current);
    Optional<SignedIn> earlier = welcome.earlier(ctx);
    Person changed = reception.people().choosePassword(person, chosen);
    ctx.json(welcome.letGoOn(ctx, changed, earlier));
  }

  /** The password once more, before what an administrator does. */
  void confirm(Context ctx) throws IOException {
    Person person = welcome.signedIn(ctx);
    welcome.prove(ctx, person, Requests.secret(Requests.body(ctx), "current"));
    SessionCookie.of(ctx).ifPresent(reception.sessions()::prove);
    ctx.json(me(ctx, Optional.of(person)));
  }

  private void leave(Context ctx) {
    SessionCookie.clear(ctx);
    reception.events().recheck();
    ctx.json(welcome.me(Actor.nobody(), Optional.empty(), Optional.empty()));
  }
}
