-- Gauges, in versions: the newest of a name holds. bandwidth: share of the centre frequency.
CREATE TABLE gauge (
  name       TEXT    NOT NULL,
  version    INTEGER NOT NULL,
  centre_mhz REAL    NOT NULL,
  bandwidth  REAL    NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL,
  PRIMARY KEY (name, version)
) WITHOUT ROWID;

-- Which gauge measures a line from a moment on; of several with the same moment the one said last.
CREATE TABLE gauge_use (
  id         INTEGER PRIMARY KEY,
  line       TEXT    NOT NULL,
  gauge      TEXT    NOT NULL,
  holds_from INTEGER NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);

-- What the gauge of a line is set to for a layer of a structure, from a moment on; before the first row
-- what the structures file says. greatest_um: the greatest thickness it is set to expect; may be empty.
CREATE TABLE gauge_setting (
  id           INTEGER PRIMARY KEY,
  line         TEXT    NOT NULL,
  structure    TEXT    NOT NULL,
  layer        TEXT    NOT NULL,
  velocity_mps REAL    NOT NULL,
  offset_ns    REAL    NOT NULL,
  greatest_um  REAL,
  holds_from   INTEGER NOT NULL,
  author       TEXT    NOT NULL,
  reason       TEXT    NOT NULL,
  decided_at   INTEGER NOT NULL
);
CREATE INDEX gauge_setting_of_line ON gauge_setting (line, structure, id);

-- A calibration of a layer on reference pieces: what was found, beside what was set before. structure:
-- empty where it is of a resin, wherever that is. lack of fit: chi_square with degrees, where there is one.
CREATE TABLE calibration (
  id                  INTEGER PRIMARY KEY,
  gauge               TEXT    NOT NULL,
  structure           TEXT    NOT NULL,
  layer               TEXT    NOT NULL,
  resin               TEXT    NOT NULL,
  velocity_before_mps REAL    NOT NULL,
  offset_before_ns    REAL    NOT NULL,
  velocity_mps        REAL    NOT NULL,
  u_velocity_mps      REAL    NOT NULL,
  offset_ns           REAL    NOT NULL,
  u_offset_ns         REAL    NOT NULL,
  covariance          REAL    NOT NULL,
  chi_square          REAL,
  degrees             INTEGER NOT NULL,
  temperature_c       REAL,
  percent_per_kelvin  REAL,
  warnings            TEXT    NOT NULL,
  author              TEXT    NOT NULL,
  reason              TEXT    NOT NULL,
  done_at             INTEGER NOT NULL
);

-- The reference pieces of a calibration. expanded_um: expanded uncertainty with coverage factor k.
CREATE TABLE calibration_piece (
  calibration_id INTEGER NOT NULL REFERENCES calibration (id),
  place          INTEGER NOT NULL,
  name           TEXT    NOT NULL,
  thickness_um   REAL    NOT NULL,
  expanded_um    REAL    NOT NULL,
  k              REAL    NOT NULL,
  material       TEXT    NOT NULL,
  how_known      TEXT    NOT NULL,
  PRIMARY KEY (calibration_id, place)
) WITHOUT ROWID;

-- Readings of a reference piece. kind: thickness (um, at the velocity and offset before) or time (ns).
CREATE TABLE calibration_reading (
  calibration_id INTEGER NOT NULL REFERENCES calibration (id),
  piece          INTEGER NOT NULL,
  place          INTEGER NOT NULL,
  kind           TEXT    NOT NULL,
  value          REAL    NOT NULL,
  PRIMARY KEY (calibration_id, piece, place)
) WITHOUT ROWID;

-- Versions of how readings as exported are re-scaled, per reported layer; added and never changed.
-- takes_back: the version that this one takes back, 0 where it has steps of its own.
CREATE TABLE scaling (
  line           TEXT    NOT NULL,
  structure      TEXT    NOT NULL,
  position       INTEGER NOT NULL,
  version        INTEGER NOT NULL,
  takes_back     INTEGER NOT NULL,
  calibration_id INTEGER REFERENCES calibration (id),
  author         TEXT    NOT NULL,
  reason         TEXT    NOT NULL,
  decided_at     INTEGER NOT NULL,
  PRIMARY KEY (line, structure, position, version)
) WITHOUT ROWID;

-- From a moment on, corrected = factor * exported + offset_um, which is what velocity_mps gives.
CREATE TABLE scaling_step (
  line         TEXT    NOT NULL,
  structure    TEXT    NOT NULL,
  position     INTEGER NOT NULL,
  version      INTEGER NOT NULL,
  holds_from   INTEGER NOT NULL,
  factor       REAL    NOT NULL,
  offset_um    REAL    NOT NULL,
  velocity_mps REAL    NOT NULL,
  PRIMARY KEY (line, structure, position, version, holds_from),
  FOREIGN KEY (line, structure, position, version) REFERENCES scaling (line, structure, position, version)
) WITHOUT ROWID;

-- Versions of limits that were carried along with a re-scaling: from which version, so that they fit the
-- readings as they are shown from holds_from on.
CREATE TABLE limits_carried (
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  version   INTEGER NOT NULL,
  source    INTEGER NOT NULL,
  PRIMARY KEY (line, structure, version)
) WITHOUT ROWID;

-- Known films that a gauge is checked on. sigma_um: deviation of single readings, where it was stated.
CREATE TABLE check_standard (
  id           INTEGER PRIMARY KEY,
  gauge        TEXT    NOT NULL,
  name         TEXT    NOT NULL,
  thickness_um REAL    NOT NULL,
  expanded_um  REAL    NOT NULL,
  k            REAL    NOT NULL,
  sigma_um     REAL,
  material     TEXT    NOT NULL,
  how_known    TEXT    NOT NULL,
  author       TEXT    NOT NULL,
  reason       TEXT    NOT NULL,
  decided_at   INTEGER NOT NULL
);

-- What a gauge showed on them, um.
CREATE TABLE check_reading (
  id          INTEGER PRIMARY KEY,
  standard_id INTEGER NOT NULL REFERENCES check_standard (id),
  at          INTEGER NOT NULL,
  um          REAL    NOT NULL,
  author      TEXT    NOT NULL,
  note        TEXT    NOT NULL,
  written_at  INTEGER NOT NULL
);
CREATE INDEX check_reading_in_time ON check_reading (standard_id, at, id);

-- What a person decided about the samples that a failed check made doubtful (keep, leave-out).
CREATE TABLE check_decision (
  id         INTEGER PRIMARY KEY,
  reading_id INTEGER NOT NULL REFERENCES check_reading (id),
  verdict    TEXT    NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
