package dev.filmward.web;

import dev.filmward.access.SessionBook.Expiry;
import java.util.List;
import java.util.Optional;

/**
 * How people and machines come in.
 *
 * @param tls where the server itself speaks TLS
 * @param guests people of a demonstration whom anybody may be, without a password
 */
public record DoorOptions(
    Reading reading,
    Expiry expiry,
    Forwarding forwarding,
    Optional<TlsKey> tls,
    List<String> guests) {

  /** Everybody signs in, nothing before the server is believed. */
  public static final DoorOptions SHUT =
      new DoorOptions(
          Reading.SIGNED_IN, Expiry.A_SHIFT, Forwarding.none(), Optional.empty(), List.of());

  public DoorOptions {
    guests = List.copyOf(guests);
  }

  public DoorOptions with(Reading other) {
    return new DoorOptions(other, expiry, forwarding, tls, guests);
  }

  public DoorOptions with(Forwarding other) {
    return new DoorOptions(reading, expiry, other, tls, guests);
  }

  public DoorOptions with(TlsKey key) {
    return new DoorOptions(reading, expiry, forwarding, Optional.of(key), guests);
  }

  public DoorOptions with(Expiry other) {
    return new DoorOptions(reading, other, forwarding, tls, guests);
  }

  public DoorOptions withGuests(List<String> names) {
    return new DoorOptions(reading, expiry, forwarding, tls, names);
  }
}
