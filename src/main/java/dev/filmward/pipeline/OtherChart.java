package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.chart.Cusum;
import dev.filmward.chart.CusumDesign;
import dev.filmward.chart.CusumPoint;
import dev.filmward.chart.DeviationBaseline;
import dev.filmward.chart.Ewma;
import dev.filmward.chart.EwmaDesign;
import dev.filmward.chart.IndividualsBaseline;
import dev.filmward.chart.IndividualsLimits;
import dev.filmward.chart.MeanDeviationLimits;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.drift.ResidualChart;
import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.rule.Side;
import dev.filmward.stats.Moments;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Charts that an analysis can draw besides means and ranges; sources as in {@code chart}. */
public enum OtherChart {
  /** Means and standard deviations, sigma from the pooled deviations. */
  MEAN_DEVIATION {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      DeviationBaseline sum = new DeviationBaseline();
      for (int i = 0; i < baseline.count(); i++) {
        sum.add(baseline.size(i), baseline.mean(i), baseline.sumOfSquares(i));
      }
      return sum.limits(DeviationBaseline.Estimate.POOLED).map(found -> plot(all, found));
    }

    private Charted plot(SubgroupColumn all, MeanDeviationLimits limits) {
      List<ChartSignal> signals = new ArrayList<>();
      int usual = 1;
      for (int i = 0; i < all.count(); i++) {
        int size = all.size(i);
        usual = Math.max(usual, size);
        addBeyond(signals, i, "mean", all.mean(i), limits.mean(size));
        if (size > 1) {
          double deviation = Math.sqrt(all.sumOfSquares(i) / (size - 1));
          addBeyond(signals, i, "deviation", deviation, limits.deviation(size));
        }
      }
      Map<String, Band> bands = new LinkedHashMap<>();
      bands.put("mean", limits.mean(usual));
      if (usual > 1) {
        bands.put("deviation", limits.deviation(usual));
      }
      return new Charted(word(), bands, signals);
    }
  },

  /** Sample means as single values, sigma from their moving ranges: right when samples differ. */
  INDIVIDUALS {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      IndividualsBaseline sum = new IndividualsBaseline();
      for (int i = 0; i < baseline.count(); i++) {
        sum.add(baseline.mean(i));
      }
      return sum.limits().map(found -> plot(all, found));
    }

    private Charted plot(SubgroupColumn all, IndividualsLimits limits) {
      List<ChartSignal> signals = new ArrayList<>();
      for (int i = 0; i < all.count(); i++) {
        addBeyond(signals, i, "value", all.mean(i), limits.value());
        if (i > 0) {
          double moved = Math.abs(all.mean(i) - all.mean(i - 1));
          addBeyond(signals, i, "moving-range", moved, limits.movingRange());
        }
      }
      Map<String, Band> bands = new LinkedHashMap<>();
      bands.put("value", limits.value());
      bands.put("moving-range", limits.movingRange());
      return new Charted(word(), bands, signals);
    }
  },

  /** Weight 0.2, limits at 2.86: 371 samples between false alarms. */
  EWMA {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      EwmaDesign design = new EwmaDesign(0.2, 2.86, EwmaDesign.Limits.EXACT);
      Ewma ewma = new Ewma(design);
      List<ChartSignal> signals = new ArrayList<>();
      for (int i = 0; i < all.count(); i++) {
        var point = ewma.next(limits.zMean(all.size(i), all.mean(i)));
        if (point.isBeyond()) {
          signals.add(new ChartSignal("average", i, point.value() > 0 ? Side.HIGH : Side.LOW));
        }
      }
      double reach = design.asymptoticLimit();
      return Optional.of(
          new Charted(word(), Map.of("average", new Band(-reach, 0, reach)), signals));
    }
  },

  /** Allowance 0.5 and limit 4.77 sigma of the mean: 370 samples between false alarms. */
  CUSUM {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      CusumDesign design = CusumDesign.of(0.5, 4.77);
      Cusum cusum = new Cusum(design);
      List<ChartSignal> signals = new ArrayList<>();
      for (int i = 0; i < all.count(); i++) {
        CusumPoint point = cusum.next(limits.zMean(all.size(i), all.mean(i)));
        if (point.isHigh()) {
          signals.add(new ChartSignal("sum", i, Side.HIGH));
        }
        if (point.isLow()) {
          signals.add(new ChartSignal("sum", i, Side.LOW));
        }
      }
      double limit = design.limit();
      return Optional.of(new Charted(word(), Map.of("sum", new Band(-limit, 0, limit)), signals));
    }
  },

  /**
   * What each mean is off from what the one before let expect, in its standard deviations: right
   * when neighbours are alike. Level, likeness and spread are those of the baseline.
   */
  RESIDUAL {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      Autocorrelation neighbours = new Autocorrelation(1);
      Moments means = new Moments();
      for (int i = 0; i < baseline.count(); i++) {
        neighbours.add(baseline.mean(i));
        means.add(baseline.mean(i));
      }
      double sigma = means.standardDeviation().orElse(0);
      boolean isSingular =
          means.count() < FEWEST_FOR_LIKENESS || !(sigma > 0) || Math.abs(neighbours.lag1()) >= 1;
      return isSingular
          ? Optional.empty()
          : Optional.of(plot(all, new ResidualChart(means.mean(), neighbours.lag1(), sigma)));
    }

    private Charted plot(SubgroupColumn all, ResidualChart chart) {
      Band band = new Band(-3, 0, 3);
      List<ChartSignal> signals = new ArrayList<>();
      for (int i = 0; i < all.count(); i++) {
        addBeyond(signals, i, "residual", chart.add(all.mean(i)).orElse(0), band);
      }
      return new Charted(word(), Map.of("residual", band), signals);
    }
  },

  /** Level, jump and spread about the lanes' profile; drawn from whole samples by FilmLook. */
  THREE_WAY {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      return Optional.empty();
    }
  },

  /** All layers together; drawn from whole samples by FilmLook, with the charts of the total. */
  T_SQUARED {
    @Override
    Optional<Charted> plot(SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits) {
      return Optional.empty();
    }
  };

  /** Means below which the likeness of neighbours is a guess. */
  private static final int FEWEST_FOR_LIKENESS = 20;

  /** As written in files and options. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Draws the chart.
   *
   * @param baseline the subgroups that limits come from
   * @param limits of means and ranges, for charts in units of the mean's sigma
   */
  abstract Optional<Charted> plot(
      SubgroupColumn all, SubgroupColumn baseline, MeanRangeLimits limits);

  private static void addBeyond(
      List<ChartSignal> signals, int index, String part, double value, Band band) {
    if (value > band.upper()) {
      signals.add(new ChartSignal(part, index, Side.HIGH));
    } else if (value < band.lower()) {
      signals.add(new ChartSignal(part, index, Side.LOW));
    }
  }
}
