package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.rule.ChosenTests;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgrouping;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a line makes of one structure. */
record Production(String line, Structure structure) {
  private static final Duration NEXT = Duration.ofNanos(1000);

  Series series(Characteristic characteristic) {
    return new Series(line, structure.code(), characteristic.position());
  }

  /** The choices of tests that people made for it. */
  ChosenTests tests(Tables tables) {
    return tables.tests().of(line, structure.code());
  }

  /** The earliest moment after all samples so far; empty where there are none. */
  Optional<Instant> next(Tables tables) {
    return tables.samples().productions().stream()
        .filter(made -> made.line().equals(line) && made.structure().equals(structure.code()))
        .map(made -> made.lastAt().plus(NEXT))
        .max(Comparator.naturalOrder());
  }

  /**
   * Whether a sample has a place for each layer: not where its readings were thinned, nor where it
   * was taken while the structure had other layers.
   */
  boolean hasLayersOf(Sample sample) {
    return sample.layers() == structure.reported().size();
  }

  /** Layers and total, which are charted. */
  List<Characteristic> characteristics() {
    return Subgrouping.layersAndTotal(structure).characteristics();
  }
}
