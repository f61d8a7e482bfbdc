package dev.filmward.web;

import dev.filmward.access.SessionBook;
import dev.filmward.access.TokenDesk;
import dev.filmward.people.Actor;
import dev.filmward.people.Permission;
import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import dev.filmward.people.Token;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.http.UnauthorizedResponse;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * Lets a request through to its route when whoever asks has the route's permission: a person by the
 * cookie of a session, a machine by a token in the Authorization header. What is taken away is gone
 * at once: who it is, is remembered only until an account, session or token changes. Thread-safe.
 */
final class Gate {
  private static final String ATTRIBUTE = "filmward.actor";
  private static final String BEARER = "Bearer ";

  /** Asked for the headers alone, the server would say 200 without looking how it is. */
  private static final Set<String> FOR_MACHINES = Set.of("/health", "/metrics");

  private final SessionBook sessions;
  private final TokenDesk tokens;
  private final Reading reading;
  private final Demands demands;
  private final RefusedDeeds refusals = new RefusedDeeds();

  Gate(SessionBook sessions, TokenDesk tokens, Reading reading, Demands demands) {
    this.sessions = sessions;
    this.tokens = tokens;
    this.reading = reading;
    this.demands = demands;
  }

  Demands demands() {
    return demands;
  }

  /**
   * Who asks.
   *
   * @param number what the log says of it, which is no name
   */
  private record Asker(Actor actor, Optional<String> number, Optional<Person> person) {
    static final Asker NOBODY = new Asker(Actor.nobody(), Optional.empty(), Optional.empty());

    static Asker of(Token token) {
      return new Asker(token.actor(), Optional.of("token-" + token.id()), Optional.empty());
    }

    Asker and(Permission more) {
      return new Asker(actor.and(more), number, person);
    }
  }

  private Asker asker(Person person) {
    return new Asker(
        demands.actor(person), Optional.of("person-" + person.id()), Optional.of(person));
  }

  /** What a request shows to be let in; a token counts before a cookie. */
  record Shown(Optional<Secret> cookie, Optional<Secret> token) {
    static Shown by(Context ctx) {
      String header = ctx.header("Authorization");
      Optional<Secret> token =
          header != null && header.startsWith(BEARER)
              ? Optional.of(new Secret(header.substring(BEARER.length()).strip()))
              : Optional.empty();
      return new Shown(SessionCookie.of(ctx), token);
    }
  }

  /**
   * For each request that has a route or a page. Who asks for health is not asked, for that needs
   * the database, which may be down.
   */
  void check(Context ctx) {
    Optional<Permission> needed =
        ctx.routeRoles().stream()
            .filter(Routes.Needs.class::isInstance)
            .map(role -> ((Routes.Needs) role).permission())
            .findFirst();
    boolean isData = ctx.path().startsWith("/api/");
    boolean isForMachines = FOR_MACHINES.contains(ctx.path());
    if ((isData || isForMachines) && ctx.method().equals(HandlerType.HEAD)) {
      throw new MethodNotAllowedResponse("ask for this with GET", Map.of());
    }
    if (needed.isEmpty() && isData) {
      throw new IllegalStateException("the route " + ctx.path() + " says no permission");
    }
    boolean asksWho = isData || !needed.equals(Optional.of(Permission.ANYBODY));
    if (needed.isPresent() && asksWho) {
      Shown shown = Shown.by(ctx);
      Asker asker = asker(shown);
      Actor actor = asker.actor();
      ctx.attribute(ATTRIBUTE, actor);
      asker.number().ifPresent(number -> ctx.attribute(RequestWatch.PERSON, number));
      demand(ctx, asker, needed.get());
      demandProof(ctx, asker, needed.get());
      touch(ctx, shown);
    }
  }

  private void demand(Context ctx, Asker asker, Permission needed) {
    Actor actor = asker.actor();
    boolean isWrongToken = Shown.by(ctx).token().isPresent() && !actor.isKnown();
    if (isWrongToken || (!actor.may(needed) && !actor.isKnown())) {
      ctx.header("WWW-Authenticate", "Bearer");
      throw notSignedIn(isWrongToken ? "this token does not hold (any more)" : "not signed in");
    }
    if (!actor.may(needed)) {
      asker.number().ifPresent(number -> refusals.note(number, needed));
      throw refusal(asker, needed);
    }
  }

  private ForbiddenResponse refusal(Asker asker, Permission needed) {
    if (asker.person().filter(Person::mustChangePassword).isPresent()) {
      return forbidden("a one-time password opens nothing yet", "choose your own password first");
    }
    if (asker.person().filter(demands::wantFactorOf).isPresent()) {
      return forbidden(
          "this role does nothing without a second factor", "set one up on the sign-in page");
    }
    return forbidden(
        asker.actor().name() + " may not do this; it needs the permission " + needed.word(),
        "ask somebody who may, or an administrator");
  }

  private static ForbiddenResponse forbidden(String what, String instead) {
    return new ForbiddenResponse(what, Map.of(ErrorReplies.INSTEAD, instead));
  }

  /** What administrators change wants the password once more where it was not given lately. */
  private void demandProof(Context ctx, Asker asker, Permission needed) {
    boolean isDeed = needed == Permission.ADMINISTER && ctx.method().equals(HandlerType.POST);
    boolean isGuest = asker.person().filter(demands::isGuest).isPresent();
    if (isDeed && !isGuest && SessionCookie.of(ctx).filter(sessions::isProven).isEmpty()) {
      throw new ForbiddenResponse(
          "this wants your password once more",
          Map.of(
              ErrorReplies.INSTEAD, "give it, then do this again", ErrorReplies.ASKS, "confirm"));
    }
  }

  static UnauthorizedResponse notSignedIn(String what) {
    return new UnauthorizedResponse(
        what, Map.of(ErrorReplies.INSTEAD, "sign in, then do it again"));
  }

  /** What changes something is a person's doing; what a page asks for by itself is not. */
  private void touch(Context ctx, Shown shown) {
    if (ctx.method().equals(HandlerType.POST) && shown.token().isEmpty()) {
      shown.cookie().ifPresent(sessions::touch);
    }
  }

  /** Who asks, found by {@link #check}. */
  static Actor actor(Context ctx) {
    Actor actor = ctx.attribute(ATTRIBUTE);
    return actor == null ? Actor.nobody() : actor;
  }

  /** The person who is signed in, where it is one. */
  Optional<Person> person(Context ctx) {
    Shown shown = Shown.by(ctx);
    return shown.token().isPresent() ? Optional.empty() : shown.cookie().flatMap(sessions::whose);
  }

  /** Whether whoever sent a request may still do what it was let in for. */
  BooleanSupplier stillMay(Context ctx, Permission permission) {
    Shown shown = Shown.by(ctx);
    return () -> asker(shown).actor().may(permission);
  }

  private Asker asker(Shown shown) {
    Asker known =
        shown.token().isPresent()
            ? shown.token().flatMap(tokens::shown).map(Asker::of).orElse(Asker.NOBODY)
            : shown.cookie().flatMap(sessions::whose).map(this::asker).orElse(Asker.NOBODY);
    return reading == Reading.OPEN ? known.and(Permission.READ) : known;
  }
}
