package dev.filmward.web;

import dev.filmward.access.FactorDesk;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.SessionBook;
import dev.filmward.access.SignIn;
import dev.filmward.access.TokenDesk;
import dev.filmward.pipeline.Plant;

/** What lets people and machines in, together. Thread-safe. */
record Reception(
    PeopleDesk people,
    FactorDesk factors,
    TokenDesk tokens,
    SessionBook sessions,
    SignIn signIn,
    Gate gate,
    EventStream events) {

  static Reception of(Plant plant, EventStream events, DoorOptions options) {
    SessionBook sessions = new SessionBook(plant.store(), plant.clock(), options.expiry());
    TokenDesk tokens = new TokenDesk(plant.store(), plant.clock());
    return new Reception(
        new PeopleDesk(plant.store(), plant.clock()),
        new FactorDesk(plant.store(), plant.clock()),
        tokens,
        sessions,
        new SignIn(plant.store(), plant.clock()),
        new Gate(sessions, tokens, options.reading(), options.demands()),
        events);
  }
}
