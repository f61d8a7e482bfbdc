-- Who is told of what. Versions are added and never changed; the newest one of a rule holds.
-- state: on, off, removed. events: words with blanks between them. Quiet times are minutes of the day.
CREATE TABLE telling_rule (
  rule_id       INTEGER NOT NULL,
  version       INTEGER NOT NULL,
  state         TEXT    NOT NULL,
  name          TEXT    NOT NULL,
  role          TEXT,
  channel       TEXT    NOT NULL,
  address       TEXT    NOT NULL,
  least_priority TEXT    NOT NULL,
  events        TEXT    NOT NULL,
  quiet_from    INTEGER,
  quiet_to      INTEGER,
  night         TEXT    NOT NULL,
  most_an_hour  INTEGER NOT NULL,
  again_minutes INTEGER NOT NULL,
  author        TEXT    NOT NULL,
  reason        TEXT    NOT NULL,
  decided_at    INTEGER NOT NULL,
  PRIMARY KEY (rule_id, version)
) WITHOUT ROWID;

-- For which lines a version of a rule holds; none for all of them.
CREATE TABLE telling_line (
  rule_id INTEGER NOT NULL,
  version INTEGER NOT NULL,
  line    TEXT    NOT NULL,
  PRIMARY KEY (rule_id, version, line)
) WITHOUT ROWID;

-- How the plant tells people. Versions are added; the newest one holds. Minutes are empty where an
-- alarm of that priority is not escalated.
CREATE TABLE telling_settings (
  version        INTEGER PRIMARY KEY,
  mail_host      TEXT,
  mail_port      INTEGER,
  mail_security  TEXT,
  mail_user      TEXT,
  mail_from      TEXT,
  public_address TEXT,
  high_minutes   INTEGER,
  medium_minutes INTEGER,
  low_minutes    INTEGER,
  again_minutes  INTEGER,
  author         TEXT    NOT NULL,
  reason         TEXT    NOT NULL,
  decided_at     INTEGER NOT NULL
);

-- Passwords: of the mail server, and what the messages of a webhook are signed with. Never read by
-- anybody but the sender.
CREATE TABLE telling_secret (
  name   TEXT NOT NULL PRIMARY KEY,
  secret TEXT NOT NULL
) WITHOUT ROWID;

-- When the server raised an alarm (its own clock), and when it last escalated it.
CREATE TABLE telling_alarm (
  alarm_id     INTEGER NOT NULL PRIMARY KEY,
  raised_at    INTEGER NOT NULL,
  escalated_at INTEGER
);

-- Messages, written in the transaction of what they tell of. state: waiting, sent, given-up,
-- summed-up (in the message summary_id), withdrawn. held: waits for quiet hours to end or for the
-- hour to pass. event: what it tells of, or summary. about: which alarm, whatever its number.
CREATE TABLE outbox (
  id          INTEGER PRIMARY KEY,
  message_key TEXT    NOT NULL,
  rule_id     INTEGER NOT NULL,
  alarm_id    INTEGER,
  event       TEXT    NOT NULL,
  about       TEXT    NOT NULL,
  priority    TEXT    NOT NULL,
  subject     TEXT    NOT NULL,
  body        TEXT    NOT NULL,
  made_at     INTEGER NOT NULL,
  first_due   INTEGER NOT NULL,
  due_at      INTEGER NOT NULL,
  held        INTEGER NOT NULL,
  state       TEXT    NOT NULL,
  attempts    INTEGER NOT NULL DEFAULT 0,
  last_error  TEXT    NOT NULL DEFAULT '',
  tried_at    INTEGER,
  sent_to     TEXT    NOT NULL DEFAULT '',
  summary_id  INTEGER
);
CREATE INDEX outbox_waiting ON outbox (state, due_at);
CREATE INDEX outbox_of_rule ON outbox (rule_id, made_at);
CREATE INDEX outbox_of_alarm ON outbox (alarm_id);
