-- A weekly report on its way to a recipient. sent_at: when the mail server took it; said: what the last attempt came to.
CREATE TABLE report_mail (
  week     TEXT COLLATE "C" NOT NULL,
  address  TEXT COLLATE "C" NOT NULL,
  attempts BIGINT NOT NULL,
  tried_at BIGINT NOT NULL,
  sent_at  BIGINT,
  said     TEXT COLLATE "C" NOT NULL,
  PRIMARY KEY (week, address)
);
