-- The signatures that a diagnosis looks for, in versions like the causes; the built-in ones while there is none.
CREATE TABLE signature_version (
  version    INTEGER PRIMARY KEY,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);

-- causes: one a line, the cause's code, a blank, the words; checks: one a line.
CREATE TABLE signature (
  version     INTEGER NOT NULL REFERENCES signature_version (version),
  place       INTEGER NOT NULL,
  code        TEXT    NOT NULL,
  name        TEXT    NOT NULL,
  kind        TEXT    NOT NULL,
  causes      TEXT    NOT NULL,
  checks      TEXT    NOT NULL,
  tells_apart TEXT    NOT NULL,
  PRIMARY KEY (version, place)
) WITHOUT ROWID;

CREATE TABLE signature_condition (
  version    INTEGER NOT NULL REFERENCES signature_version (version),
  place      INTEGER NOT NULL,
  number     INTEGER NOT NULL,
  statistic  TEXT    NOT NULL,
  comparison TEXT    NOT NULL,
  threshold  REAL    NOT NULL,
  weight     REAL    NOT NULL,
  role       TEXT    NOT NULL,
  PRIMARY KEY (version, place, number)
) WITHOUT ROWID;

-- What happened at a line, as people wrote it down: resin lots, screen changes and the like. positions: the
-- reported layers concerned, apart by blanks, empty for any. Rows stay; one that was wrong is withdrawn.
CREATE TABLE line_log (
  id           INTEGER PRIMARY KEY,
  line         TEXT    NOT NULL,
  kind         TEXT    NOT NULL,
  at           INTEGER NOT NULL,
  positions    TEXT    NOT NULL,
  words        TEXT    NOT NULL,
  by_whom      TEXT    NOT NULL,
  written_at   INTEGER NOT NULL,
  withdrawn_at INTEGER,
  withdrawn_by TEXT,
  withdrawn_why TEXT
);
CREATE INDEX line_log_in_time ON line_log (line, at, id);

-- What a diagnosis named when a person said what the cause was; the newest row of an alarm holds.
-- named: a line for each candidate, best first: the signature's code, then the codes of its causes, apart by blanks.
CREATE TABLE diagnosis_outcome (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  at       INTEGER NOT NULL,
  cause    TEXT    NOT NULL,
  named    TEXT    NOT NULL
);
CREATE INDEX outcome_of_alarm ON diagnosis_outcome (alarm_id, id);
