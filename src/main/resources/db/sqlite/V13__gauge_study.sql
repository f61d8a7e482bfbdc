-- A gauge study: every operator measures every marked spot (part) so many times. seed: of the order of
-- measurement, trial by trial. ending: finished, abandoned, or empty while readings may be entered.
CREATE TABLE gauge_study (
  id         INTEGER PRIMARY KEY,
  gauge      TEXT    NOT NULL,
  structure  TEXT    NOT NULL,
  purpose    TEXT    NOT NULL,
  trials     INTEGER NOT NULL,
  seed       INTEGER NOT NULL,
  planned_by TEXT    NOT NULL,
  planned_at INTEGER NOT NULL,
  ending     TEXT,
  ended_by   TEXT,
  ended_at   INTEGER,
  conclusion TEXT
);

-- Its parts, operators, layers and total (kind) in their order; limits of single readings as they were
-- when the study was planned, empty where there is none.
CREATE TABLE gauge_study_name (
  study_id INTEGER NOT NULL REFERENCES gauge_study (id),
  kind     TEXT    NOT NULL,
  place    INTEGER NOT NULL,
  name     TEXT    NOT NULL,
  lower_um REAL,
  upper_um REAL,
  PRIMARY KEY (study_id, kind, place)
) WITHOUT ROWID;

-- One reading of one layer; places are those of gauge_study_name. Rows are only added: of several for one
-- place the last one holds, and why says why it was entered again.
CREATE TABLE gauge_study_reading (
  id             INTEGER PRIMARY KEY,
  study_id       INTEGER NOT NULL REFERENCES gauge_study (id),
  layer_place    INTEGER NOT NULL,
  part_place     INTEGER NOT NULL,
  operator_place INTEGER NOT NULL,
  trial          INTEGER NOT NULL,
  um             REAL    NOT NULL,
  entered_by     TEXT    NOT NULL,
  entered_at     INTEGER NOT NULL,
  why            TEXT    NOT NULL
);
CREATE INDEX gauge_study_reading_of ON gauge_study_reading (study_id, id);
