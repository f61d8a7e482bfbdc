-- When an alarm last came before people, by the server's clock; empty while it was only ever held back.
-- line_mode: what the line was doing at its last sample. raised: whether it signalled while the line ran.
-- out_of_spec_at: when its mean is expected to meet a specification limit.
ALTER TABLE alarm ADD COLUMN shown_at INTEGER;
ALTER TABLE alarm ADD COLUMN line_mode TEXT NOT NULL DEFAULT 'running';
ALTER TABLE alarm ADD COLUMN raised INTEGER NOT NULL DEFAULT 1;
ALTER TABLE alarm ADD COLUMN out_of_spec_at INTEGER;
UPDATE alarm SET shown_at = opened_at;
CREATE INDEX alarm_in_state ON alarm (state, line);

-- Alarms that a person holds back: shelved until a time, or out of service until somebody ends it.
-- structure, deviation: empty for any. positions: of characteristics, apart by blanks, 0 for the total;
-- empty for all. ended_at: when a person or its time ended it.
CREATE TABLE hold (
  id         INTEGER PRIMARY KEY,
  kind       TEXT    NOT NULL,
  line       TEXT    NOT NULL,
  structure  TEXT,
  positions  TEXT    NOT NULL,
  deviation  TEXT,
  held_from  INTEGER NOT NULL,
  until_at   INTEGER,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  ended_at   INTEGER,
  ended_by   TEXT,
  end_reason TEXT
);
CREATE INDEX hold_going_on ON hold (ended_at, line);

-- What a line was doing from a moment on, as a person said it; rows are added and never changed.
-- samples: after how many it runs again by itself, 0 for never.
CREATE TABLE line_mode (
  id         INTEGER PRIMARY KEY,
  line       TEXT    NOT NULL,
  mode       TEXT    NOT NULL,
  since      INTEGER NOT NULL,
  samples    INTEGER NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
CREATE INDEX line_mode_in_time ON line_mode (line, since, id);

-- For a test (chart/test), how many samples in a row must signal before it opens an alarm, and for how
-- many it must be silent before the alarm has returned to normal. A test that is not here has 2 and 1.
CREATE TABLE tests_delay (
  line          TEXT    NOT NULL,
  structure     TEXT    NOT NULL,
  version       INTEGER NOT NULL,
  test          TEXT    NOT NULL,
  opens_after   INTEGER NOT NULL,
  returns_after INTEGER NOT NULL,
  PRIMARY KEY (line, structure, version, test),
  FOREIGN KEY (line, structure, version) REFERENCES tests_version (line, structure, version)
) WITHOUT ROWID;
