-- How readings of a structure on a line are screened from a moment on, as a person decided; rows are
-- added and never changed. gauge_mhz: the gauge's frequency, where it is known.
CREATE TABLE screening_version (
  line       TEXT    NOT NULL,
  structure  TEXT    NOT NULL,
  version    INTEGER NOT NULL,
  gauge_mhz  REAL,
  holds_from INTEGER NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL,
  PRIMARY KEY (line, structure, version)
) WITHOUT ROWID;

-- What is done about a kind of misreading: hold-out, mark or off. A kind that is not here is held out.
CREATE TABLE screening_choice (
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  version   INTEGER NOT NULL,
  kind      TEXT    NOT NULL,
  treatment TEXT    NOT NULL,
  PRIMARY KEY (line, structure, version, kind),
  FOREIGN KEY (line, structure, version) REFERENCES screening_version (line, structure, version)
) WITHOUT ROWID;

-- Readings that look misread. They follow from the sample and the 25 before it, and are worked out
-- again when these change. positions, lanes: apart by blanks. flagged_at: by the server's clock.
CREATE TABLE sample_flag (
  id           INTEGER PRIMARY KEY,
  sample_id    INTEGER NOT NULL REFERENCES sample (id),
  kind         TEXT    NOT NULL,
  positions    TEXT    NOT NULL,
  lanes        TEXT    NOT NULL,
  strength     TEXT    NOT NULL,
  effect       TEXT    NOT NULL,
  evidence     TEXT    NOT NULL,
  rule_version INTEGER NOT NULL,
  flagged_at   INTEGER NOT NULL
);
CREATE INDEX flag_of_sample ON sample_flag (sample_id, id);

-- Samples that have flags or about whose readings a person decided. state: held-out, marked, put-back,
-- confirmed or left-out; those held out, confirmed and left out are not charted.
CREATE TABLE sample_screening (
  sample_id     INTEGER PRIMARY KEY REFERENCES sample (id),
  production_id INTEGER NOT NULL REFERENCES production (id),
  taken_at      INTEGER NOT NULL,
  state         TEXT    NOT NULL
);
CREATE INDEX screening_in_time ON sample_screening (production_id, taken_at);

-- What people decided about misread samples; rows are only added, the newest of a sample holds.
CREATE TABLE screening_decision (
  id         INTEGER PRIMARY KEY,
  sample_id  INTEGER NOT NULL REFERENCES sample (id),
  state      TEXT    NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
CREATE INDEX decision_on_sample ON screening_decision (sample_id, id);
