-- A structures file is a version of the structures in it: who gave it and why, and from when on it holds (null: from when it
-- was received). takes_back: the file whose version of a structure this one undoes.
ALTER TABLE structures_file ADD COLUMN given_by TEXT NOT NULL DEFAULT 'not named';
ALTER TABLE structures_file ADD COLUMN reason TEXT NOT NULL DEFAULT '';
ALTER TABLE structures_file ADD COLUMN holds_from INTEGER;
ALTER TABLE structures_file ADD COLUMN takes_back INTEGER;
