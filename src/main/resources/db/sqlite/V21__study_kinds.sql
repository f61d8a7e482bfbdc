-- What a gauge study is to find out: crossed, bias, linearity or stability. The dates of a study of stability are in
-- gauge_study_name (kind date); its trials count on from date to date, equally many on each.
ALTER TABLE gauge_study ADD COLUMN kind TEXT NOT NULL DEFAULT 'crossed';

-- The known pieces of a study of bias, linearity or stability, as they were known when it was planned; their names are
-- the parts in gauge_study_name. expanded_um: uncertainty with the factor k.
CREATE TABLE gauge_study_piece (
  study_id     INTEGER NOT NULL REFERENCES gauge_study (id),
  place        INTEGER NOT NULL,
  thickness_um REAL    NOT NULL,
  expanded_um  REAL    NOT NULL,
  k            REAL    NOT NULL,
  material     TEXT    NOT NULL,
  how_known    TEXT    NOT NULL,
  PRIMARY KEY (study_id, place)
) WITHOUT ROWID;
