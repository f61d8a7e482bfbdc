-- A second factor of a person. factor: none, offered (its key was shown and no code of it came yet) or on;
-- factor_key: 160 bits in hexadecimal digits, as it must be to work codes out of it; factor_step: the newest
-- step of 30 s whose code was taken, so that none is taken twice. signed_in_at, signed_in_from: the last sign-in.
ALTER TABLE person ADD COLUMN factor TEXT COLLATE "C" NOT NULL DEFAULT 'none';
ALTER TABLE person ADD COLUMN factor_key TEXT COLLATE "C";
ALTER TABLE person ADD COLUMN factor_step BIGINT NOT NULL DEFAULT 0;
ALTER TABLE person ADD COLUMN signed_in_at BIGINT;
ALTER TABLE person ADD COLUMN signed_in_from TEXT COLLATE "C";

-- What lets a person in once without the phone, by SHA-256; used_at is empty while it can be used.
CREATE TABLE recovery_code (
  hash      TEXT COLLATE "C"    PRIMARY KEY,
  person_id BIGINT NOT NULL REFERENCES person (id),
  used_at   BIGINT
);
CREATE INDEX recovery_code_of_person ON recovery_code (person_id);

-- proven_at: when the person last gave the password in this session; earlier_at, earlier_from: the sign-in
-- before the one that began it.
ALTER TABLE session ADD COLUMN proven_at BIGINT NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN earlier_at BIGINT;
ALTER TABLE session ADD COLUMN earlier_from TEXT COLLATE "C";
