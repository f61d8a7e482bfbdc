package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.composition.CompositionBaseline;
import dev.filmward.composition.CompositionChart;
import dev.filmward.composition.CovarianceEstimate;
import dev.filmward.composition.Decomposition;
import dev.filmward.composition.LayerMeans;
import dev.filmward.composition.Phase;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.KeptSamples.Kept;
import dev.filmward.rule.Side;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Draws the T squared chart of a film: total and log-ratios of its layers. Of each sample the layer
 * means are kept. A sample of the baseline is held against the beta limit, one outside it against
 * the F limit; the centre is the median of the distance. For one thread.
 */
final class CompositionLook {
  private static final double HALF = 0.5;

  private final List<String> names;
  private final Optional<BaselineChoice> choice;
  private final KeptSamples<Optional<double[]>> samples = new KeptSamples<>();

  CompositionLook(Structure structure, Optional<BaselineChoice> choice) {
    this.names = structure.reported().stream().map(ReportedLayer::name).toList();
    this.choice = choice;
  }

  /** Samples without a total have no place in the series of the total. */
  void add(Sample sample) {
    if (hasTotal(sample)) {
      samples.add(sample, LayerMeans.of(sample));
    }
  }

  private static boolean hasTotal(Sample sample) {
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      boolean isWhole = true;
      for (int position = 1; position <= sample.layers(); position++) {
        isWhole &= sample.isMeasured(position, lane);
      }
      if (isWhole) {
        return true;
      }
    }
    return false;
  }

  Optional<Charted> chart() {
    List<Kept<Optional<double[]>>> points = samples.inTimeOrder();
    BaselineIndices baseline =
        new BaselineIndices(choice, points.size(), index -> points.get(index).takenAt());
    CompositionBaseline sum = new CompositionBaseline(names.size());
    for (int i = 0; i < points.size(); i++) {
      if (baseline.has(i)) {
        points.get(i).figures().ifPresent(sum::add);
      }
    }
    return sum.chart(CovarianceEstimate.SAMPLE).map(chart -> plot(chart, points, baseline));
  }

  private Charted plot(
      CompositionChart chart, List<Kept<Optional<double[]>>> points, BaselineIndices baseline) {
    List<ChartSignal> signals = new ArrayList<>();
    Map<String, Band> bands = new LinkedHashMap<>();
    for (int i = 0; i < points.size(); i++) {
      Phase phase = baseline.has(i) ? Phase.BASELINE : Phase.MONITORING;
      bands.computeIfAbsent(part(phase), unseen -> band(chart, phase));
      Optional<double[]> layers = points.get(i).figures();
      if (layers.isPresent() && chart.tSquared(layers.get()) > chart.limit(phase)) {
        List<String> behind = behind(chart.explain(layers.get(), phase));
        signals.add(new ChartSignal(part(phase), i, Side.HIGH, behind));
      }
    }
    return new Charted(OtherChart.T_SQUARED.word(), bands, signals);
  }

  private static String part(Phase phase) {
    return phase == Phase.BASELINE ? "distance" : "distance-later";
  }

  private static Band band(CompositionChart chart, Phase phase) {
    return new Band(0, chart.limit(phase, HALF), chart.limit(phase));
  }

  private List<String> behind(Decomposition parts) {
    return parts.behind().stream()
        .map(position -> position == Decomposition.TOTAL ? "Total" : names.get(position - 1))
        .toList();
  }
}
