-- Who sent a file and why; corrections carry it. heading (everything before the first row) and mapping
-- (YAML) are kept where rows are in quarantine, so that such a row can be read by itself again;
-- mended: how many of the readings in quarantine were.
ALTER TABLE file ADD COLUMN by_whom TEXT COLLATE "C" NOT NULL DEFAULT 'not named';
ALTER TABLE file ADD COLUMN why TEXT COLLATE "C" NOT NULL DEFAULT '';
ALTER TABLE file ADD COLUMN heading TEXT COLLATE "C";
ALTER TABLE file ADD COLUMN mapping TEXT COLLATE "C";
ALTER TABLE file ADD COLUMN mended BIGINT NOT NULL DEFAULT 0;

-- A row that was mended stays, with what was submitted in its place, by whom, when, and as which file.
ALTER TABLE quarantine ADD COLUMN mended_text TEXT COLLATE "C";
ALTER TABLE quarantine ADD COLUMN mended_by TEXT COLLATE "C";
ALTER TABLE quarantine ADD COLUMN mended_at BIGINT;
ALTER TABLE quarantine ADD COLUMN mended_file_id BIGINT REFERENCES file (id);

CREATE INDEX correction_of_file ON correction (file_id, id);
CREATE INDEX correction_of_sample ON correction (sample_id, id);

-- Every reading that took the place of another one: what, who, when and why.
CREATE VIEW correction_history AS
SELECT c.id, p.line, p.structure, s.roll, s.sample, s.taken_at, c.position AS layer, c.lane,
       c.old_um, c.new_um, f.by_whom, f.why, c.corrected_at, c.file_id, f.name AS file
FROM correction c
JOIN sample s ON s.id = c.sample_id
JOIN production p ON p.id = s.production_id
JOIN file f ON f.id = c.file_id;
