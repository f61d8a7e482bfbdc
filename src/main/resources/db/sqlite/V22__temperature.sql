-- How warm the film was, degrees Celsius, for each lane in the order of lanes, null where it was not measured; [] where it
-- was nowhere. In correction, position 0 is a lane's temperature, and its values are degrees.
ALTER TABLE sample ADD COLUMN celsius TEXT NOT NULL DEFAULT '[]';

-- Readings of a step are corrected by the temperature of their film as well, where these are given:
-- corrected * (1 + percent_per_kelvin * (celsius - at_c) / 100).
ALTER TABLE scaling_step ADD COLUMN at_c REAL;
ALTER TABLE scaling_step ADD COLUMN percent_per_kelvin REAL;
