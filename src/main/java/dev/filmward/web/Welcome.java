package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.access.SignIn.Attempt;
import dev.filmward.access.SignIn.Outcome;
import dev.filmward.access.SignIn.Wanting;
import dev.filmward.people.Actor;
import dev.filmward.people.Permission;
import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import dev.filmward.store.PersonTable.SignedIn;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.UnauthorizedResponse;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Lets people in, asks them for what they know, and tells a page who is there. Thread-safe. */
final class Welcome {
  private static final Logger LOG = LoggerFactory.getLogger(Welcome.class);
  private static final int TOO_MANY = 429;

  private final Reception reception;
  private final ZoneId zone;

  Welcome(Reception reception, ZoneId zone) {
    this.reception = reception;
    this.zone = zone;
  }

  Person signedIn(Context ctx) {
    return reception.gate().person(ctx).orElseThrow(() -> Gate.notSignedIn("not signed in"));
  }

  /** Whom a name, a password and perhaps a code belong to. */
  Person check(Context ctx, Attempt attempt) {
    return personOf(ctx, reception.signIn().check(attempt));
  }

  /** Whether whoever is signed in knows the password. */
  void prove(Context ctx, Person person, String password) {
    Attempt attempt = new Attempt(person.name(), password, Seen.in(ctx).address());
    personOf(ctx, reception.signIn().checkPassword(attempt));
  }

  private static Person personOf(Context ctx, Outcome outcome) {
    if (!outcome.delay().isZero()) {
      throw tooMany(ctx, outcome.delay());
    }
    if (outcome.wanting() != Wanting.NOTHING) {
      LOG.info("Sign-in from {} wants {}", Seen.in(ctx).address(), outcome.wanting());
    }
    return outcome
        .person()
        .orElseThrow(
            () ->
                outcome.wanting() == Wanting.PASSWORD
                    ? Gate.notSignedIn("name and password do not belong together")
                    : codeWanted(outcome.wanting()));
  }

  private static UnauthorizedResponse codeWanted(Wanting wanting) {
    String what =
        wanting == Wanting.CODE
            ? "a code is asked for as well"
            : "the code does not fit, or was used before";
    return new UnauthorizedResponse(
        what,
        Map.of(
            ErrorReplies.INSTEAD,
            "give the newest code of your second factor, or a recovery code",
            ErrorReplies.ASKS,
            "code"));
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
  ObjectNode letIn(Context ctx, Person person) {
    SessionCookie.of(ctx).ifPresent(reception.sessions()::end);
    String address = Seen.in(ctx).address();
    LOG.info("person-{} signed in from {}", person.id(), address);
    return begun(ctx, person, reception.sessions().begin(person, address));
  }

  /** The sign-in before this one, which is lost with a session that ends. */
  Optional<SignedIn> earlier(Context ctx) {
    return SessionCookie.of(ctx).flatMap(reception.sessions()::earlier);
  }

  /** A new session for somebody whose account changed and whose sessions ended with that. */
  ObjectNode letGoOn(Context ctx, Person changed, Optional<SignedIn> earlier) {
    reception.events().recheck();
    String address = Seen.in(ctx).address();
    return begun(ctx, changed, reception.sessions().renew(changed, address, earlier));
  }

  private ObjectNode begun(Context ctx, Person person, Secret secret) {
    SessionCookie.set(ctx, secret);
    Actor actor = reception.gate().demands().actor(person);
    return me(actor, Optional.of(person), reception.sessions().earlier(secret));
  }

  /** Who asks, for pages that show and hide things by it. */
  ObjectNode me(Actor actor, Optional<Person> person, Optional<SignedIn> earlier) {
    ObjectNode node = Wire.object();
    node.put("name", actor.isKnown() ? actor.name() : null);
    node.put("role", person.map(one -> one.role().word()).orElse(null));
    node.put("mustChange", person.map(Person::mustChangePassword).orElse(false));
    node.put("mustSetUp", person.map(reception.gate().demands()::wantFactorOf).orElse(false));
    boolean hasFactor = person.map(Person::hasSecondFactor).orElse(false);
    node.put("secondFactor", hasFactor);
    node.put(
        "recoveryCodesLeft",
        hasFactor ? reception.factors().recoveryCodesLeft(person.get()) : null);
    ArrayNode may = node.putArray("may");
    actor.permissions().stream().map(Permission::word).sorted().forEach(may::add);
    putEarlier(node, earlier);
    return node;
  }

  private void putEarlier(ObjectNode node, Optional<SignedIn> earlier) {
    if (earlier.isEmpty()) {
      node.putNull("earlier");
      return;
    }
    node.putObject("earlier")
        .put("at", Wire.time(earlier.get().at(), zone))
        .put("from", earlier.get().address());
  }
}
