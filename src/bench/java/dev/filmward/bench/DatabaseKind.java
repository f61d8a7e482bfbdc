package dev.filmward.bench;

/** Where data are kept. */
public enum DatabaseKind {
  SQLITE,
  POSTGRESQL
}
