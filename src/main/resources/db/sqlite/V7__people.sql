-- People who may sign in. name_key is the name as it is compared; password is an Argon2id hash; standing is
-- active, one-time (the password must be changed at the first sign-in, before one_time_until) or disabled.
CREATE TABLE person (
  id             INTEGER PRIMARY KEY AUTOINCREMENT,
  name           TEXT    NOT NULL,
  name_key       TEXT    NOT NULL UNIQUE,
  role           TEXT    NOT NULL,
  standing       TEXT    NOT NULL,
  password       TEXT    NOT NULL,
  one_time_until INTEGER,
  added_at       INTEGER NOT NULL
);

-- Who is signed in, by the SHA-256 of the secret in the browser's cookie; the secret itself is not kept.
CREATE TABLE session (
  hash       TEXT    PRIMARY KEY,
  person_id  INTEGER NOT NULL REFERENCES person (id),
  began_at   INTEGER NOT NULL,
  seen_at    INTEGER NOT NULL,
  address    TEXT    NOT NULL
) WITHOUT ROWID;
CREATE INDEX session_of_person ON session (person_id);

-- What machines may do, by the SHA-256 of their token; scope holds permissions, apart by blanks.
CREATE TABLE token (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  name       TEXT    NOT NULL,
  name_key   TEXT    NOT NULL,
  hash       TEXT    NOT NULL UNIQUE,
  scope      TEXT    NOT NULL,
  added_by   TEXT    NOT NULL,
  added_at   INTEGER NOT NULL,
  ends_at    INTEGER NOT NULL,
  revoked_at INTEGER
);
