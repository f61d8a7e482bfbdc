-- A shift calendar that a person set: who, when and why. Never changed once written; it gives the shifts
-- of the days from holds_from (a date) on, until a later version does.
CREATE TABLE shift_calendar (
  version            INTEGER PRIMARY KEY,
  holds_from         TEXT    NOT NULL,
  lines_per_operator INTEGER NOT NULL,
  author             TEXT    NOT NULL,
  reason             TEXT    NOT NULL,
  decided_at         INTEGER NOT NULL
);

-- The shifts of a calendar. starts_at: HH:MM by the plant's clock; days: numbers of weekdays on which it
-- begins, 1 is Monday; crews: one a day, a line each, empty where crews are not told apart.
CREATE TABLE shift_pattern (
  version   INTEGER NOT NULL REFERENCES shift_calendar (version),
  place     INTEGER NOT NULL,
  name      TEXT    NOT NULL,
  starts_at TEXT    NOT NULL,
  days      TEXT    NOT NULL,
  crews     TEXT    NOT NULL,
  PRIMARY KEY (version, place)
) WITHOUT ROWID;

-- What people of a shift wrote down. line: empty where it is about the plant; at: the moment it is about;
-- folded: all that is searched, in small letters; follow_up: 1 where it stays until somebody settles it.
CREATE TABLE shift_note (
  id         INTEGER PRIMARY KEY,
  line       TEXT    NOT NULL,
  at         INTEGER NOT NULL,
  written_at INTEGER NOT NULL,
  by_whom    TEXT    NOT NULL,
  text       TEXT    NOT NULL,
  roll       TEXT    NOT NULL,
  folded     TEXT    NOT NULL,
  follow_up  INTEGER NOT NULL,
  settled_at INTEGER,
  settled_by TEXT,
  outcome    TEXT
);
CREATE INDEX shift_note_in_time ON shift_note (at, id);

-- What was handed over, as it was signed: content is JSON, digest its SHA-256 in hexadecimal digits.
-- line: empty where all lines were handed over together; day and shift name the shift that ended.
CREATE TABLE handover (
  id      INTEGER PRIMARY KEY,
  line    TEXT    NOT NULL,
  day     TEXT    NOT NULL,
  shift   TEXT    NOT NULL,
  content TEXT    NOT NULL,
  digest  TEXT    NOT NULL
);
CREATE INDEX handover_of_shift ON handover (day, shift, line, id);

-- Who signed it, as what (outgoing, incoming), and what that person said by it.
CREATE TABLE handover_signature (
  handover_id INTEGER NOT NULL REFERENCES handover (id),
  side        TEXT    NOT NULL,
  by_whom     TEXT    NOT NULL,
  meaning     TEXT    NOT NULL,
  digest      TEXT    NOT NULL,
  signed_at   INTEGER NOT NULL,
  PRIMARY KEY (handover_id, side)
) WITHOUT ROWID;

CREATE TRIGGER handover_is_never_changed BEFORE UPDATE ON handover
BEGIN SELECT RAISE(ABORT, 'what was signed is never changed'); END;

CREATE TRIGGER handover_is_never_deleted BEFORE DELETE ON handover
BEGIN SELECT RAISE(ABORT, 'what was signed is never deleted'); END;

CREATE TRIGGER signature_is_never_changed BEFORE UPDATE ON handover_signature
BEGIN SELECT RAISE(ABORT, 'signatures are never changed'); END;

CREATE TRIGGER signature_is_never_deleted BEFORE DELETE ON handover_signature
BEGIN SELECT RAISE(ABORT, 'signatures are never deleted'); END;
