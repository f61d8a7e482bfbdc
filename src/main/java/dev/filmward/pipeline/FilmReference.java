package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.diagnosis.LayerReference;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.LimitsTable.Exclusion;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How the layers of a film usually are: from the samples that the limits in force at a moment were
 * computed from. At most {@value #MOST} of them are looked at, the latest. For one thread.
 */
final class FilmReference {
  /** As many as tell a standard deviation to a few percent. */
  private static final int MOST = 400;

  private static final int FEWEST = 8;

  private final Tables tables;
  private final Production production;

  FilmReference(Tables tables, Production production) {
    this.tables = tables;
    this.production = production;
  }

  /** A reference for each reported layer, from one version of limits. */
  record Found(int version, List<LayerReference> layers) {}

  /** Empty where no limits were in force, or a layer has too little in their baseline. */
  Optional<Found> at(Instant moment) {
    int positions = production.structure().reported().size();
    Optional<LimitsVersion> version = inForce(production.characteristics(), moment);
    if (version.isEmpty()) {
      return Optional.empty();
    }
    Span span = new Span(version.get().baseline().from(), version.get().baseline().to());
    Set<List<String>> excluded = excluded(version.get().version());
    List<Sample> samples = samples(span, excluded);
    List<LayerReference> layers = new ArrayList<>();
    for (int position = 1; position <= positions; position++) {
      layer(position, means(position, span, excluded), samples).ifPresent(layers::add);
    }
    return layers.size() == positions
        ? Optional.of(new Found(version.get().version(), layers))
        : Optional.empty();
  }

  private Optional<LimitsVersion> inForce(List<Characteristic> characteristics, Instant moment) {
    return characteristics.stream()
        .map(production::series)
        .map(series -> SeriesJudge.inForce(tables.limits().of(series), moment))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Set<List<String>> excluded(int version) {
    Set<List<String>> excluded = new HashSet<>();
    VersionKey key = new VersionKey(production.line(), production.structure().code(), version);
    for (Exclusion exclusion : tables.limits().exclusions(key)) {
      excluded.add(List.of(exclusion.roll(), exclusion.sample()));
    }
    return excluded;
  }

  private static boolean isIn(Set<List<String>> excluded, SampleKey key) {
    return excluded.contains(List.of(key.roll(), key.sample()));
  }

  private List<Double> means(int position, Span span, Set<List<String>> excluded) {
    List<FigureRow> rows =
        tables
            .figures()
            .within(new Series(production.line(), production.structure().code(), position), span);
    return rows.subList(Math.max(0, rows.size() - MOST), rows.size()).stream()
        .filter(row -> !isIn(excluded, row.key()))
        .map(FigureRow::subgroup)
        .flatMap(Optional::stream)
        .map(Subgroup::mean)
        .toList();
  }

  private List<Sample> samples(Span span, Set<List<String>> excluded) {
    Charted charted = Charted.asKept(tables);
    List<Sample> samples = new ArrayList<>();
    tables
        .samples()
        .within(
            production.line(),
            production.structure().code(),
            span,
            stored -> {
              if (production.hasLayersOf(stored.sample())
                  && samples.size() < MOST
                  && !isIn(excluded, stored.sample().key())) {
                charted.of(stored.sample()).ifPresent(samples::add);
              }
            });
    return samples;
  }

  private static Optional<LayerReference> layer(
      int position, List<Double> means, List<Sample> samples) {
    if (means.size() < FEWEST) {
      return Optional.empty();
    }
    double mean = means.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double squares = means.stream().mapToDouble(value -> (value - mean) * (value - mean)).sum();
    double sigma = Math.sqrt(squares / (means.size() - 1));
    return mean > 0 && sigma > 0
        ? Optional.of(new LayerReference(position, mean, sigma, laneEffects(position, samples)))
        : Optional.empty();
  }

  /** What each lane is above the mean of its sample; empty where samples differ in their lanes. */
  private static List<Double> laneEffects(int position, List<Sample> samples) {
    int lanes = samples.isEmpty() ? 0 : samples.get(0).laneCount();
    double[] sums = new double[lanes];
    int complete = 0;
    for (Sample sample : samples) {
      if (sample.laneCount() != lanes) {
        return List.of();
      }
      complete += add(sums, sample, position) ? 1 : 0;
    }
    if (complete < FEWEST) {
      return List.of();
    }
    List<Double> effects = new ArrayList<>(Collections.nCopies(lanes, 0.0));
    for (int lane = 0; lane < lanes; lane++) {
      effects.set(lane, sums[lane] / complete);
    }
    return effects;
  }

  /** Adds a sample's deviations, where all of its lanes were measured. */
  private static boolean add(double[] sums, Sample sample, int position) {
    double mean = 0;
    for (int lane = 0; lane < sums.length; lane++) {
      if (!sample.isMeasured(position, lane)) {
        return false;
      }
      mean += sample.thicknessUm(position, lane) / sums.length;
    }
    for (int lane = 0; lane < sums.length; lane++) {
      sums[lane] += sample.thicknessUm(position, lane) - mean;
    }
    return true;
  }
}
