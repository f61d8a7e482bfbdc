package dev.filmward.report;

import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.study.GaugeStudy;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.StudyKind;
import dev.filmward.pipeline.StudyDesk;
import dev.filmward.report.FilmWeek.LastStudy;
import dev.filmward.report.FilmWeek.StudyLayer;
import dev.filmward.store.StoredStudy;
import dev.filmward.store.StoredStudy.End;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the last finished gauge study of a film, and says how much of a week's readings lies inside
 * the specification by a guard band of twice the gauge's standard deviation.
 *
 * <p>Source: ISO 14253-1 for the guard band, with the expanded uncertainty of the study alone.
 */
final class LastStudies {
  private static final int MOST = 1000;
  private static final double COVERAGE = 2;

  private final Tables tables;
  private final Structure structure;
  private final Instant until;

  LastStudies(Tables tables, Structure structure, Instant until) {
    this.tables = tables;
    this.structure = structure;
    this.until = until;
  }

  Optional<LastStudy> find(List<CharacteristicTally> tallies) {
    return tables.studies().newest(MOST).stream()
        .filter(study -> study.plan().kind() == StudyKind.CROSSED)
        .filter(study -> study.plan().structure().equals(structure.code()))
        .filter(study -> study.ending().filter(this::counts).isPresent())
        .max(Comparator.comparing(study -> study.ending().orElseThrow().at()))
        .map(study -> last(study, tallies));
  }

  private boolean counts(StoredStudy.Ending ending) {
    return ending.end() == End.FINISHED && ending.at().isBefore(until);
  }

  private LastStudy last(StoredStudy study, List<CharacteristicTally> tallies) {
    StoredStudy.Ending ending = study.ending().orElseThrow();
    List<StudyLayer> layers = new ArrayList<>();
    for (LayerOutcome outcome : StudyDesk.outcomes(StudyDesk.look(tables, study))) {
      if (outcome instanceof LayerOutcome.Studied studied) {
        layers.add(layer(studied.study(), tallies));
      }
    }
    return new LastStudy(
        study.id(), study.plan().gauge(), ending.at(), ending.by(), ending.words(), layers);
  }

  private static StudyLayer layer(GaugeStudy study, List<CharacteristicTally> tallies) {
    String name = study.readings().layer();
    double sigma = Math.sqrt(study.variance().gauge());
    OptionalDouble accepted =
        tallies.stream()
            .filter(tally -> FilmFacts.isLayer(tally.characteristic()))
            .filter(tally -> tally.characteristic().name().equals(name))
            .findFirst()
            .map(tally -> accepted(tally, COVERAGE * sigma))
            .orElse(OptionalDouble.empty());
    return new StudyLayer(name, sigma, study.percentTolerance(), accepted);
  }

  private static OptionalDouble accepted(CharacteristicTally tally, double guard) {
    SpecLimits spec = tally.spec();
    double[] readings = tally.ordered();
    if (readings.length == 0 || (spec.lower().isEmpty() && spec.upper().isEmpty())) {
      return OptionalDouble.empty();
    }
    double from = spec.lower().orElse(-Double.MAX_VALUE) + guard;
    double to = spec.upper().orElse(Double.MAX_VALUE) - guard;
    long inside = 0;
    for (double reading : readings) {
      inside += reading >= from && reading <= to ? 1 : 0;
    }
    return OptionalDouble.of((double) inside / readings.length);
  }
}
