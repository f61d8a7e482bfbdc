package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;

/**
 * What charts take of a sample as the gauge exported it. The readings as exported are kept for
 * good; whatever is charted, counted or reported of them goes through here, so that all say the
 * same. Within one transaction, for one thread.
 */
final class Charted {
  private final IdentityHashMap<Structure, Subgrouping> subgroupings = new IdentityHashMap<>();
  private final Optional<OutOfCharts> outOfCharts;

  private Charted(Optional<OutOfCharts> outOfCharts) {
    this.outOfCharts = outOfCharts;
  }

  /** As people have decided by now. */
  static Charted asKept(Tables tables) {
    return new Charted(Optional.of(new OutOfCharts(tables)));
  }

  /** All that came, as the gauge exported it. */
  static Charted asExported() {
    return new Charted(Optional.empty());
  }

  /** The readings that are charted; empty where none of the sample are. */
  Optional<Sample> of(Sample exported) {
    return outOfCharts.filter(out -> out.holds(exported)).isPresent()
        ? Optional.empty()
        : Optional.of(exported);
  }

  /** Subgroups by position, the total first; empty where nothing is charted. */
  List<Optional<Subgroup>> figures(Sample exported, Structure structure) {
    Subgrouping subgrouping = subgroupings.computeIfAbsent(structure, Subgrouping::layersAndTotal);
    Optional<Sample> charted = of(exported);
    List<Optional<Subgroup>> figures = new ArrayList<>();
    figures.add(Optional.empty());
    for (Characteristic characteristic : subgrouping.characteristics()) {
      Optional<Subgroup> subgroup =
          charted.flatMap(sample -> subgrouping.of(sample, characteristic));
      if (characteristic.position() == 0) {
        figures.set(0, subgroup);
      } else {
        figures.add(subgroup);
      }
    }
    return figures;
  }
}
