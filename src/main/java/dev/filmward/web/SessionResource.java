package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.SignIn;
import dev.filmward.access.SignIn.Attempt;
import dev.filmward.people.Actor;
import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Signing in and out, the own password, and who is there. */
final class SessionResource {
  private static final int TOO_MANY = 429;

  private final Reception reception;
  private final PeopleJson json;
  private final List<String> guests;

  SessionResource(Reception reception, PeopleJson json, List<String> guests) {
    this.reception = reception;
    this.json = json;
    this.guests = guests;
  }

  /** A page asks this when a person opens or touches it, so that it counts as doing something. */
  void me(Context ctx) {
    Optional<Person> person = reception.gate().person(ctx);
    SessionCookie.of(ctx).ifPresent(reception.sessions()::touch);
    ObjectNode answer = json.me(Gate.actor(ctx), person);
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

  void signIn(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    letIn(ctx, check(ctx, Requests.field(body, "name"), secret(body, "password")));
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
    letIn(ctx, person);
  }

  void signOut(Context ctx) {
    SessionCookie.of(ctx).ifPresent(reception.sessions()::end);
    leave(ctx);
  }

  void signOutEverywhere(Context ctx) {
    reception.sessions().endAllOf(signedIn(ctx));
    leave(ctx);
  }

  void choosePassword(Context ctx) throws IOException {
    Person person = signedIn(ctx);
    JsonNode body = Requests.body(ctx);
    String chosen = secret(body, "new");
    String current = secret(body, "current");
    if (chosen.equals(current)) {
      throw new IllegalArgumentException("the new password is the old one; take another one");
    }
    check(ctx, person.name(), current);
    Person changed = reception.people().choosePassword(person, chosen);
    reception.events().recheck();
    letIn(ctx, changed);
  }

  private Person signedIn(Context ctx) {
    return reception.gate().person(ctx).orElseThrow(() -> Gate.notSignedIn("not signed in"));
  }

  private Person check(Context ctx, String name, String password) {
    SignIn.Outcome outcome =
        reception.signIn().check(new Attempt(name, password, Seen.in(ctx).address()));
    if (!outcome.delay().isZero()) {
      throw tooMany(ctx, outcome.delay());
    }
    return outcome
        .person()
        .orElseThrow(() -> Gate.notSignedIn("name and password do not belong together"));
  }

  private static HttpResponseException tooMany(Context ctx, Duration delay) {
    long seconds = delay.toSeconds() + 1;
    ctx.header("Retry-After", String.valueOf(seconds));
    return new HttpResponseException(
        TOO_MANY,
        "too many tries failed just now",
        Map.of(ErrorReplies.INSTEAD, "wait " + seconds + " s, then try again"));
  }

  /** A new session each time, so that none that was there before is taken over. */
  private void letIn(Context ctx, Person person) {
    SessionCookie.of(ctx).ifPresent(reception.sessions()::end);
    Secret secret = reception.sessions().begin(person, Seen.in(ctx).address());
    SessionCookie.set(ctx, secret);
    ctx.json(json.me(person.actor(), Optional.of(person)));
  }

  private void leave(Context ctx) {
    SessionCookie.clear(ctx);
    reception.events().recheck();
    ctx.json(json.me(Actor.nobody(), Optional.empty()));
  }

  /** Taken as it is: blanks are part of a password. */
  private static String secret(JsonNode body, String name) {
    String value = body.path(name).asText("");
    if (value.isEmpty()) {
      throw new IllegalArgumentException("\"" + name + "\" is missing");
    }
    return value;
  }
}
