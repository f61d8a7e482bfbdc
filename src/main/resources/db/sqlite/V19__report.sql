-- What was decided about the weekly report, as JSON: index and confidence that are asked for, prices, schedule. The newest holds.
CREATE TABLE report_settings (
  version    INTEGER PRIMARY KEY,
  settings   TEXT    NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);

-- A weekly report. line, structure: empty for all. revision: 0 for a draft, which is replaced by a newer one; from 1 on it is issued
-- and frozen: signed_by, signed_at, reason. content: the report as JSON, gzip; digest: SHA-256 of that JSON; data_digest: of the
-- readings; changes: figures that a later revision changed, as JSON.
CREATE TABLE report (
  id          INTEGER PRIMARY KEY,
  week        TEXT    NOT NULL,
  line        TEXT    NOT NULL,
  structure   TEXT    NOT NULL,
  revision    INTEGER NOT NULL,
  made_at     INTEGER NOT NULL,
  signed_by   TEXT    NOT NULL,
  signed_at   INTEGER,
  reason      TEXT    NOT NULL,
  digest      TEXT    NOT NULL,
  data_digest TEXT    NOT NULL,
  changes     TEXT    NOT NULL,
  content     BLOB    NOT NULL,
  UNIQUE (week, line, structure, revision)
);
