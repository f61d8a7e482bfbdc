package dev.filmward.web;

import dev.filmward.people.Actor;
import dev.filmward.people.Person;
import dev.filmward.people.Role;
import java.util.List;
import java.util.Set;

/**
 * What is asked of people besides a password. Guests of a demonstration have none to give, and are
 * asked for nothing.
 *
 * @param codesFor roles that do nothing without a second factor
 */
record Demands(Set<Role> codesFor, List<String> guests) {
  Demands {
    codesFor = Set.copyOf(codesFor);
    guests = List.copyOf(guests);
  }

  boolean isGuest(Person person) {
    return guests.contains(person.name());
  }

  /** Whether a person must set a second factor up before anything else. */
  boolean wantFactorOf(Person person) {
    return codesFor.contains(person.role()) && !person.hasSecondFactor() && !isGuest(person);
  }

  /** What the person may do now. */
  Actor actor(Person person) {
    return wantFactorOf(person) ? Actor.limited(person.name()) : person.actor();
  }
}
