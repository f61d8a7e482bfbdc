-- Times are whole microseconds since 1970-01-01 UTC: datetime(taken_at / 1000000, 'unixepoch').
-- Lengths are micrometres.

-- What was given as structures, word for word; of two with the same code the later one holds.
CREATE TABLE structures_file (
  id          INTEGER PRIMARY KEY,
  name        TEXT    NOT NULL,
  received_at INTEGER NOT NULL,
  yaml        TEXT    NOT NULL
);

-- A file of readings that came, with its counts; rows x layers = readings + missing + quarantined.
CREATE TABLE file (
  id          INTEGER PRIMARY KEY,
  name        TEXT    NOT NULL,
  source      TEXT    NOT NULL,
  received_at INTEGER NOT NULL,
  finished_at INTEGER,
  row_count   INTEGER NOT NULL DEFAULT 0,
  readings    INTEGER NOT NULL DEFAULT 0,
  missing     INTEGER NOT NULL DEFAULT 0,
  quarantined INTEGER NOT NULL DEFAULT 0,
  fresh       INTEGER NOT NULL DEFAULT 0,
  known       INTEGER NOT NULL DEFAULT 0,
  corrected   INTEGER NOT NULL DEFAULT 0,
  notes       TEXT    NOT NULL DEFAULT '',
  refusal     TEXT
);

CREATE TABLE quarantine (
  id          INTEGER PRIMARY KEY,
  file_id     INTEGER NOT NULL REFERENCES file (id),
  line_number INTEGER NOT NULL,
  column_name TEXT    NOT NULL,
  cell        TEXT    NOT NULL,
  reason      TEXT    NOT NULL,
  raw         TEXT    NOT NULL,
  readings    INTEGER NOT NULL
);
CREATE INDEX quarantine_of_file ON quarantine (file_id, id);

-- What a line has made, with the time of the newest sample.
CREATE TABLE production (
  id        INTEGER PRIMARY KEY,
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  samples   INTEGER NOT NULL,
  last_at   INTEGER NOT NULL,
  UNIQUE (line, structure)
);

-- One set of readings across the web. um is a JSON array: for each reported layer in order, an array
-- of micrometres in the order of lanes, null where nothing was measured.
CREATE TABLE sample (
  id            INTEGER PRIMARY KEY,
  production_id INTEGER NOT NULL REFERENCES production (id),
  roll          TEXT    NOT NULL,
  sample        TEXT    NOT NULL,
  taken_at      INTEGER NOT NULL,
  received_at   INTEGER NOT NULL,
  file_id       INTEGER NOT NULL REFERENCES file (id),
  lanes         TEXT    NOT NULL,
  um            TEXT    NOT NULL,
  UNIQUE (production_id, roll, sample)
);
CREATE INDEX sample_in_time ON sample (production_id, taken_at);

-- One row a reading, for people and other programs.
CREATE VIEW reading AS
SELECT p.line, p.structure, s.roll, s.sample, s.taken_at,
       lane.value AS lane, layer.key + 1 AS layer, um.value AS thickness_um
FROM sample s
JOIN production p ON p.id = s.production_id
JOIN json_each(s.um) layer
JOIN json_each(layer.value) um
JOIN json_each(s.lanes) lane ON lane.key = um.key;

-- What charts read: runs of samples of a production in the order of time, roll and sample. It follows
-- from the samples; people and other programs read those. keys: who the samples are.
CREATE TABLE block (
  id            INTEGER PRIMARY KEY,
  production_id INTEGER NOT NULL REFERENCES production (id),
  first_at      INTEGER NOT NULL,
  first_roll    TEXT    NOT NULL,
  first_sample  TEXT    NOT NULL,
  last_at       INTEGER NOT NULL,
  keys          BLOB    NOT NULL
);
CREATE INDEX block_in_time ON block (production_id, first_at, first_roll, first_sample);

-- The subgroup figures of one characteristic for the samples of a block. Position 0 is the total.
CREATE TABLE block_figures (
  block_id INTEGER NOT NULL REFERENCES block (id),
  position INTEGER NOT NULL,
  figures  BLOB    NOT NULL,
  PRIMARY KEY (block_id, position)
);

-- A reading that replaced another one; the old value is kept here for good.
CREATE TABLE correction (
  id           INTEGER PRIMARY KEY,
  sample_id    INTEGER NOT NULL REFERENCES sample (id),
  position     INTEGER NOT NULL,
  lane         INTEGER NOT NULL,
  old_um       REAL    NOT NULL,
  new_um       REAL    NOT NULL,
  file_id      INTEGER NOT NULL REFERENCES file (id),
  corrected_at INTEGER NOT NULL
);

-- A version of the control limits of one characteristic; never changed once written.
CREATE TABLE limits (
  line          TEXT    NOT NULL,
  structure     TEXT    NOT NULL,
  position      INTEGER NOT NULL,
  version       INTEGER NOT NULL,
  centre        REAL    NOT NULL,
  sigma         REAL    NOT NULL,
  subgroups     INTEGER NOT NULL,
  excluded      INTEGER NOT NULL,
  baseline_from INTEGER NOT NULL,
  baseline_to   INTEGER NOT NULL,
  holds_from    INTEGER NOT NULL,
  PRIMARY KEY (line, structure, position, version)
) WITHOUT ROWID;

-- Who moved a version of limits into a state, when and why; the first row put it in force.
CREATE TABLE limits_change (
  id        INTEGER PRIMARY KEY,
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  version   INTEGER NOT NULL,
  state     TEXT    NOT NULL,
  author    TEXT    NOT NULL,
  reason    TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
CREATE INDEX change_of_limits ON limits_change (line, structure, version, id);

-- A sample that was left out of a baseline, with the cause.
CREATE TABLE limits_exclusion (
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  version   INTEGER NOT NULL,
  roll      TEXT    NOT NULL,
  sample    TEXT    NOT NULL,
  cause     TEXT    NOT NULL,
  PRIMARY KEY (line, structure, version, roll, sample)
) WITHOUT ROWID;

-- A test fulfilled at a sample under limits in force.
CREATE TABLE signal (
  production_id INTEGER NOT NULL REFERENCES production (id),
  position      INTEGER NOT NULL,
  taken_at      INTEGER NOT NULL,
  sample_id     INTEGER NOT NULL REFERENCES sample (id),
  chart         TEXT    NOT NULL,
  test          TEXT    NOT NULL,
  side          TEXT    NOT NULL,
  PRIMARY KEY (production_id, position, taken_at, sample_id, chart, test, side)
) WITHOUT ROWID;

CREATE TABLE alarm (
  id              INTEGER PRIMARY KEY,
  line            TEXT    NOT NULL,
  structure       TEXT    NOT NULL,
  deviation       TEXT    NOT NULL,
  state           TEXT    NOT NULL,
  priority        TEXT    NOT NULL,
  historical      INTEGER NOT NULL,
  out_of_spec     INTEGER NOT NULL,
  roll            TEXT    NOT NULL,
  sample          TEXT    NOT NULL,
  opened_at       INTEGER NOT NULL,
  last_signal_at  INTEGER NOT NULL,
  returned_at     INTEGER,
  quiet_samples   INTEGER NOT NULL,
  settled_at      INTEGER,
  acknowledged_by TEXT,
  acknowledged_at INTEGER,
  cause           TEXT,
  action          TEXT,
  finding_by      TEXT,
  finding_at      INTEGER
);
CREATE INDEX alarm_of_line ON alarm (line, structure, id);

CREATE TABLE alarm_member (
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  kind     TEXT    NOT NULL,
  position INTEGER NOT NULL,
  name     TEXT    NOT NULL,
  PRIMARY KEY (alarm_id, kind, position)
) WITHOUT ROWID;

CREATE TABLE alarm_signal (
  alarm_id  INTEGER NOT NULL REFERENCES alarm (id),
  sample_id INTEGER NOT NULL REFERENCES sample (id),
  position  INTEGER NOT NULL,
  chart     TEXT    NOT NULL,
  test      TEXT    NOT NULL,
  side      TEXT    NOT NULL,
  PRIMARY KEY (alarm_id, sample_id, position, chart, test, side)
) WITHOUT ROWID;

CREATE TABLE alarm_history (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  at       INTEGER NOT NULL,
  by_whom  TEXT    NOT NULL,
  what     TEXT    NOT NULL
);
CREATE INDEX history_of_alarm ON alarm_history (alarm_id, id);
