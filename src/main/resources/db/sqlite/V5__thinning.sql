-- When the readings of a sample were taken away, its figures left: um is then an empty array, so that
-- the view reading has no rows of it. Empty where the readings are there.
ALTER TABLE sample ADD COLUMN thinned_at INTEGER;
