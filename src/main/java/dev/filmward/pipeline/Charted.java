package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.store.ScalingTable.Made;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What charts take of a sample as the gauge exported it. The readings as exported are kept for
 * good; whatever is charted, counted or reported of them goes through here, so that all say the
 * same. Within one transaction, for one thread.
 */
public final class Charted {
  private final IdentityHashMap<Structure, Subgrouping> subgroupings = new IdentityHashMap<>();
  private final Optional<OutOfCharts> outOfCharts;
  private final Map<Made, FilmScalings> scalings;

  private Charted(Optional<OutOfCharts> outOfCharts, Map<Made, FilmScalings> scalings) {
    this.outOfCharts = outOfCharts;
    this.scalings = scalings;
  }

  /** As people have decided by now. */
  public static Charted asKept(Tables tables) {
    return new Charted(Optional.of(new OutOfCharts(tables)), tables.scalings().all());
  }

  /** The same, but for velocities: readings as the gauge exported them. */
  static Charted asExported(Tables tables) {
    return new Charted(Optional.of(new OutOfCharts(tables)), Map.of());
  }

  /** The same as kept, with the samples that look misread. */
  static Charted withMisread(Tables tables) {
    return new Charted(Optional.empty(), tables.scalings().all());
  }

  /** The readings that are charted; empty where none of the sample are. */
  public Optional<Sample> of(Sample exported) {
    return outOfCharts.filter(out -> out.holds(exported)).isPresent()
        ? Optional.empty()
        : Optional.of(rescaled(exported));
  }

  /** The same; where none of the sample are charted, the sample without a reading. */
  Sample shown(Sample exported) {
    return of(exported).orElseGet(() -> withoutReadings(exported));
  }

  private Sample rescaled(Sample exported) {
    if (scalings.isEmpty()) {
      return exported;
    }
    Made made = new Made(exported.key().line(), exported.key().structure());
    return scalings.getOrDefault(made, FilmScalings.NONE).of(exported);
  }

  private static Sample withoutReadings(Sample exported) {
    return new Sample(
        exported.key(), exported.takenAt(), new int[0], new double[exported.layers()][0]);
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
