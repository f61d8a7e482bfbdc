package dev.filmward.pipeline;

import dev.filmward.composition.LayerCorrelations;
import dev.filmward.composition.LayerMeans;
import dev.filmward.film.Characteristic;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What takes the layers or the lanes of a sample together: charts of whole samples, and how layers
 * move together. For one structure on one line; for one thread.
 */
final class FilmLook {
  private final String line;
  private final Structure structure;
  private final Optional<LaneLook> lanes;
  private final Optional<CompositionLook> composition;
  private final Optional<LayerCorrelations> correlations;

  FilmLook(String line, Structure structure, AnalysisScope scope) {
    this.line = line;
    this.structure = structure;
    boolean hasRatios = structure.reported().size() > 1;
    lanes =
        scope.charts().contains(OtherChart.THREE_WAY)
            ? Optional.of(new LaneLook(scope.baseline()))
            : Optional.empty();
    composition =
        hasRatios && scope.charts().contains(OtherChart.T_SQUARED)
            ? Optional.of(new CompositionLook(structure, scope.baseline()))
            : Optional.empty();
    correlations =
        hasRatios && scope.closeness() == Closeness.DETAIL
            ? Optional.of(new LayerCorrelations(structure.reported().size()))
            : Optional.empty();
  }

  static boolean isAskedFor(AnalysisScope scope) {
    return scope.closeness() == Closeness.DETAIL
        || scope.charts().contains(OtherChart.THREE_WAY)
        || scope.charts().contains(OtherChart.T_SQUARED);
  }

  void add(Sample sample) {
    lanes.ifPresent(look -> look.add(sample));
    composition.ifPresent(look -> look.add(sample));
    correlations.ifPresent(sum -> LayerMeans.of(sample).ifPresent(sum::add));
  }

  /** The same series with the charts of whole samples. */
  Series complete(Series series) {
    Characteristic characteristic = series.key().characteristic();
    List<Charted> charts = new ArrayList<>();
    lanes.flatMap(look -> look.chart(characteristic)).ifPresent(charts::add);
    if (characteristic.kind() == Characteristic.Kind.TOTAL) {
      composition.flatMap(CompositionLook::chart).ifPresent(charts::add);
    }
    return series.with(charts, series.detail().map(detail -> resin(detail, characteristic)));
  }

  private SeriesDetail resin(SeriesDetail detail, Characteristic characteristic) {
    boolean isSumOfLimits =
        characteristic.kind() == Characteristic.Kind.TOTAL
            && structure.reported().stream()
                .anyMatch(layer -> layer.individual().lower().isPresent());
    SeriesDetail resin = detail.withDensity(FilmDensity.of(structure, characteristic));
    return isSumOfLimits ? resin.withoutGiveaway() : resin;
  }

  Optional<FilmCorrelations> correlations() {
    return correlations.map(
        sum ->
            new FilmCorrelations(
                line,
                structure.code(),
                sum.samples(),
                structure.reported().stream().map(ReportedLayer::name).toList(),
                sum.pairs()));
  }
}
