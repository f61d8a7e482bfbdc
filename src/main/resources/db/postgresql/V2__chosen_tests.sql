-- Which tests are shown and raise alarms, as a person chose: who, when and why. Never changed once
-- written; a version holds until a later one does.
CREATE TABLE tests_version (
  line       TEXT    NOT NULL,
  structure  TEXT    NOT NULL,
  version INTEGER NOT NULL,
  holds_from BIGINT NOT NULL,
  author     TEXT    NOT NULL,
  reason     TEXT    NOT NULL,
  decided_at BIGINT NOT NULL,
  PRIMARY KEY (line, structure, version)
);

-- The choice for one characteristic (position 0 is the total): tests as "chart/test", apart by
-- blanks; those that raise alarms are shown too.
CREATE TABLE tests_choice (
  line      TEXT    NOT NULL,
  structure TEXT    NOT NULL,
  version INTEGER NOT NULL,
  position INTEGER NOT NULL,
  shown     TEXT    NOT NULL,
  alarming  TEXT    NOT NULL,
  PRIMARY KEY (line, structure, version, position),
  FOREIGN KEY (line, structure, version) REFERENCES tests_version (line, structure, version)
);

-- What is done about neighbouring samples that are alike, where limits were frozen all the same.
CREATE TABLE limits_remedy (
  line       TEXT    NOT NULL,
  structure  TEXT    NOT NULL,
  version INTEGER NOT NULL,
  remedy     TEXT    NOT NULL,
  author     TEXT    NOT NULL,
  decided_at BIGINT NOT NULL,
  PRIMARY KEY (line, structure, version)
);
