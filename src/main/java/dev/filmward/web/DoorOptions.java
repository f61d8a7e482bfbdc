package dev.filmward.web;

import dev.filmward.access.SessionBook.Expiry;
import dev.filmward.people.Role;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How people and machines come in.
 *
 * @param tls where the server itself speaks TLS
 * @param guests people of a demonstration whom anybody may be, without a password
 * @param codesFor roles that do nothing without a second factor
 */
public record DoorOptions(
    Reading reading,
    Expiry expiry,
    Forwarding forwarding,
    Optional<TlsKey> tls,
    List<String> guests,
    Set<Role> codesFor) {

  /** Everybody signs in, nothing before the server is believed. */
  public static final DoorOptions SHUT =
      new DoorOptions(
          Reading.SIGNED_IN,
          Expiry.A_SHIFT,
          Forwarding.none(),
          Optional.empty(),
          List.of(),
          Set.of());

  public DoorOptions {
    guests = List.copyOf(guests);
    codesFor = Set.copyOf(codesFor);
  }

  Demands demands() {
    return new Demands(codesFor, guests);
  }

  public DoorOptions with(Reading other) {
    return new DoorOptions(other, expiry, forwarding, tls, guests, codesFor);
  }

  public DoorOptions with(Forwarding other) {
    return new DoorOptions(reading, expiry, other, tls, guests, codesFor);
  }

  public DoorOptions with(TlsKey key) {
    return new DoorOptions(reading, expiry, forwarding, Optional.of(key), guests, codesFor);
  }

  public DoorOptions with(Expiry other) {
    return new DoorOptions(reading, other, forwarding, tls, guests, codesFor);
  }

  public DoorOptions withGuests(List<String> names) {
    return new DoorOptions(reading, expiry, forwarding, tls, names, codesFor);
  }

  public DoorOptions withCodesFor(Set<Role> roles) {
    return new DoorOptions(reading, expiry, forwarding, tls, guests, roles);
  }
}
