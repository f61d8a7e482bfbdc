package dev.filmward.film;

/** What a layer is for in the film. */
public enum Role {
  SKIN,
  CORE,
  TIE,
  BARRIER,
  SEAL
}
