-- Causes that a person can choose from, a version for each time that somebody changed the list; until
-- then the built-in ones hold. A code is for machines and never changes; retired causes stay readable.
CREATE TABLE cause_version (
  version    INTEGER PRIMARY KEY,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
CREATE TABLE cause (
  version  INTEGER NOT NULL REFERENCES cause_version (version),
  place    INTEGER NOT NULL,
  code     TEXT    NOT NULL,
  words    TEXT    NOT NULL,
  standing TEXT    NOT NULL,
  PRIMARY KEY (version, place)
) WITHOUT ROWID;

-- The plan of first checks, in versions like the causes. topic: pattern/<pattern> or cause/<code>.
CREATE TABLE check_version (
  version    INTEGER PRIMARY KEY,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL
);
CREATE TABLE planned_check (
  version INTEGER NOT NULL REFERENCES check_version (version),
  topic   TEXT    NOT NULL,
  place   INTEGER NOT NULL,
  words   TEXT    NOT NULL,
  PRIMARY KEY (version, topic, place)
) WITHOUT ROWID;

-- Everything that was ever found about an alarm; the newest is the one in alarm, unless the alarm was
-- reopened since. searched: what a search looks through, in small letters.
CREATE TABLE alarm_finding (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  code     TEXT    NOT NULL,
  cause    TEXT    NOT NULL,
  note     TEXT    NOT NULL,
  action   TEXT    NOT NULL,
  by_whom  TEXT    NOT NULL,
  at       INTEGER NOT NULL,
  searched TEXT    NOT NULL
);
CREATE INDEX finding_of_alarm ON alarm_finding (alarm_id, id);

-- What was found before this table was there.
INSERT INTO alarm_finding (alarm_id, code, cause, note, action, by_whom, at, searched)
SELECT id,
       CASE cause
         WHEN 'haul-off or winder speed changed' THEN 'haul-off-speed'
         WHEN 'layflat width or blow-up ratio changed' THEN 'layflat-width'
         WHEN 'screen pack blinded' THEN 'screen-blinded'
         WHEN 'screen pack changed' THEN 'screen-changed'
         WHEN 'resin lot or silo changed' THEN 'resin-lot'
         WHEN 'feeder or hopper' THEN 'feeder-hopper'
         WHEN 'melt temperature or zone fault' THEN 'melt-temperature'
         WHEN 'die bolt, lip or air ring' THEN 'die-air-ring'
         WHEN 'start-up or change-over' THEN 'start-up'
         WHEN 'gauge: misread or couplant' THEN 'gauge-misread'
         WHEN 'gauge: velocity or calibration' THEN 'gauge-calibration'
         WHEN 'chance: no cause after looking' THEN 'no-cause-found'
         WHEN 'not found yet' THEN 'not-found-yet'
         ELSE 'other'
       END,
       cause, '', action, finding_by, finding_at, lower(cause || ' ' || action)
FROM alarm WHERE cause IS NOT NULL ORDER BY id;

CREATE TABLE alarm_comment (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  words    TEXT    NOT NULL,
  by_whom  TEXT    NOT NULL,
  at       INTEGER NOT NULL,
  searched TEXT    NOT NULL
);
CREATE INDEX comment_of_alarm ON alarm_comment (alarm_id, id);

-- A first check that somebody has done; words: as the plan had it then.
CREATE TABLE alarm_check (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  words    TEXT    NOT NULL,
  outcome  TEXT    NOT NULL,
  note     TEXT    NOT NULL,
  by_whom  TEXT    NOT NULL,
  at       INTEGER NOT NULL
);
CREATE INDEX check_of_alarm ON alarm_check (alarm_id, id);

-- To whom an alarm was handed on; until then it is with the person who took it.
CREATE TABLE alarm_owner (
  id       INTEGER PRIMARY KEY,
  alarm_id INTEGER NOT NULL REFERENCES alarm (id),
  owner    TEXT    NOT NULL,
  why      TEXT    NOT NULL,
  by_whom  TEXT    NOT NULL,
  at       INTEGER NOT NULL
);
CREATE INDEX owner_of_alarm ON alarm_owner (alarm_id, id);

-- What becomes of a roll (held, released, scrapped, rework); rows are only added, the newest holds.
CREATE TABLE roll_disposition (
  id         INTEGER PRIMARY KEY,
  line       TEXT    NOT NULL,
  structure  TEXT    NOT NULL,
  roll       TEXT    NOT NULL,
  version    INTEGER NOT NULL,
  state      TEXT    NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at INTEGER NOT NULL,
  alarm_id   INTEGER REFERENCES alarm (id),
  UNIQUE (line, structure, roll, version)
);
