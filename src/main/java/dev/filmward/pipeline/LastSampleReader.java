package dev.filmward.pipeline;

import dev.filmward.capability.LaneValues;
import dev.filmward.chart.Band;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Board.CharacteristicState;
import dev.filmward.pipeline.Board.RecentMean;
import dev.filmward.pipeline.Board.ThinnestLane;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads how every characteristic of a line stands at its last sample. For one thread. */
final class LastSampleReader {
  private final Tables tables;
  private final Structure structure;
  private final Subgrouping subgrouping;
  private final Charted charted;

  LastSampleReader(Tables tables, Structure structure) {
    this.tables = tables;
    this.charted = Charted.asKept(tables);
    this.structure = structure;
    this.subgrouping = Subgrouping.layersAndTotal(structure);
  }

  /**
   * @param samples the last ones, oldest first; at least one
   */
  List<CharacteristicState> read(String line, List<Stored> samples) {
    List<CharacteristicState> states = new ArrayList<>();
    for (Characteristic characteristic : subgrouping.characteristics()) {
      states.add(
          state(
              new Series(line, structure.code(), characteristic.position()),
              characteristic,
              samples));
    }
    return states;
  }

  private CharacteristicState state(
      Series series, Characteristic characteristic, List<Stored> samples) {
    Stored last = samples.get(samples.size() - 1);
    Optional<Subgroup> subgroup = subgroup(last.sample(), characteristic);
    List<RecentMean> recent =
        samples.stream()
            .map(Stored::sample)
            .map(
                sample ->
                    new RecentMean(
                        sample.takenAt(), subgroup(sample, characteristic).map(Subgroup::mean)))
            .toList();
    return new CharacteristicState(
        characteristic,
        subgroup,
        limits(series, last.sample(), subgroup),
        thinnest(last.sample(), characteristic),
        outOfSpec(last.sample(), characteristic),
        signals(series, last),
        recent);
  }

  private Optional<Subgroup> subgroup(Sample exported, Characteristic characteristic) {
    return charted.of(exported).flatMap(sample -> subgrouping.of(sample, characteristic));
  }

  private Optional<Band> limits(Series series, Sample last, Optional<Subgroup> subgroup) {
    List<LimitsVersion> frozen = tables.limits().of(series);
    Optional<LimitsVersion> held =
        frozen.isEmpty()
            ? LimitsDesk.trial(tables, series)
            : SeriesJudge.inForce(frozen, last.takenAt())
                .filter(version -> version.retiredAt().isEmpty());
    int size = subgroup.map(Subgroup::size).orElse(Math.max(1, last.laneCount()));
    return held.map(version -> version.limits().mean(size));
  }

  private List<Signal> signals(Series series, Stored last) {
    return tables
        .signals()
        .within(series, new Span(last.sample().takenAt(), last.sample().takenAt()))
        .stream()
        .filter(stored -> stored.sampleId() == last.id())
        .map(SignalTable.Stored::signal)
        .toList();
  }

  private Optional<ThinnestLane> thinnest(Sample sample, Characteristic characteristic) {
    Optional<ThinnestLane> thinnest = Optional.empty();
    for (LaneValue value : values(sample, characteristic)) {
      if (thinnest.isEmpty() || value.um() < thinnest.get().um()) {
        thinnest = Optional.of(new ThinnestLane(value.lane(), value.um()));
      }
    }
    return thinnest;
  }

  private int outOfSpec(Sample sample, Characteristic characteristic) {
    SpecLimits spec = structure.spec(characteristic);
    return (int)
        values(sample, characteristic).stream().filter(value -> spec.excludes(value.um())).count();
  }

  private record LaneValue(int lane, double um) {}

  private List<LaneValue> values(Sample exported, Characteristic characteristic) {
    List<LaneValue> values = new ArrayList<>();
    Optional<Sample> shown = charted.of(exported);
    if (shown.isEmpty()) {
      return values;
    }
    Sample sample = shown.get();
    double[] byLane = LaneValues.of(sample, characteristic);
    for (int lane = 0; lane < byLane.length; lane++) {
      if (!Double.isNaN(byLane[lane])) {
        values.add(new LaneValue(sample.lane(lane), byLane[lane]));
      }
    }
    return values;
  }
}
