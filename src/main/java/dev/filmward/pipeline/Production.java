package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureTable.Series;

/** What a line makes of one structure. */
record Production(String line, Structure structure) {

  Series series(Characteristic characteristic) {
    return new Series(line, structure.code(), characteristic.position());
  }
}
