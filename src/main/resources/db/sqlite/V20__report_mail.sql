-- A weekly report on its way to a recipient. sent_at: when the mail server took it; said: what the last attempt came to.
CREATE TABLE report_mail (
  week     TEXT    NOT NULL,
  address  TEXT    NOT NULL,
  attempts INTEGER NOT NULL,
  tried_at INTEGER NOT NULL,
  sent_at  INTEGER,
  said     TEXT    NOT NULL,
  PRIMARY KEY (week, address)
);
