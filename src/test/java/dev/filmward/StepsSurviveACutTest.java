package dev.filmward;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import dev.filmward.capability.CapabilityTally;
import dev.filmward.chart.Baseline;
import dev.filmward.chart.Cusum;
import dev.filmward.chart.CusumDesign;
import dev.filmward.chart.DeviationBaseline;
import dev.filmward.chart.Ewma;
import dev.filmward.chart.EwmaDesign;
import dev.filmward.chart.IndividualsBaseline;
import dev.filmward.chart.IndividualsChart;
import dev.filmward.chart.IndividualsLimits;
import dev.filmward.chart.LaneBaseline;
import dev.filmward.chart.LaneProfile;
import dev.filmward.chart.MeanDeviationLimits;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.chart.ThreeWayBaseline;
import dev.filmward.chart.ThreeWayChart;
import dev.filmward.chart.ThreeWayLimits;
import dev.filmward.composition.CompositionBaseline;
import dev.filmward.composition.CompositionChart;
import dev.filmward.composition.CovarianceEstimate;
import dev.filmward.composition.LayerCorrelations;
import dev.filmward.composition.SubgroupVectorBaseline;
import dev.filmward.composition.VectorBaseline;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.drift.Change;
import dev.filmward.drift.MeanSeries;
import dev.filmward.drift.ResidualChart;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.ZoneTests;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.CrossMoments;
import dev.filmward.stats.Moments;
import dev.filmward.stats.OneWayAnova;
import dev.filmward.stats.Restored;
import dev.filmward.stats.SampleQuantiles;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.variation.WebVariation;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every chart, test and estimator: saved at any sample and read back it goes on as if nothing had
 * happened, to the bit; what merges gives in pieces what it gives in one.
 */
class StepsSurviveACutTest {
  private static final int SAMPLES = 120;
  private static final int[] LANES = {1, 2, 3, 4, 5};
  private static final Instant START = Instant.parse("2026-11-18T05:00:00Z");

  /** Frozen when they are made: nothing of a stream is in them. */
  private static final Set<String> FROZEN =
      Set.of(
          "Cholesky",
          "CompositionChart",
          "CompositionReference",
          "LaneProfile",
          "TSquaredReference");

  /** A sample of five lanes, or of five layers, and when it was taken. */
  private record Taken(int index, double[] um) {
    double mean() {
      return Subgroup.of(um, um.length).mean();
    }

    Instant at() {
      return START.plusSeconds(900L * index);
    }
  }

  private record Step<S extends Serializable>(
      Supplier<S> fresh,
      BiFunction<S, Taken, Object> next,
      Function<S, double[]> result,
      Optional<BiConsumer<S, S>> merge) {

    String name() {
      return fresh.get().getClass().getSimpleName();
    }

    List<String> run(List<Taken> samples, Set<Integer> cuts) {
      List<String> said = new ArrayList<>();
      S step = fresh.get();
      for (Taken sample : samples) {
        step = cuts.contains(sample.index) ? Restored.from(step) : step;
        said.add(String.valueOf(next.apply(step, sample)));
      }
      said.add(Arrays.toString(result.apply(step)));
      return said;
    }

    double[] inOne(List<Taken> samples) {
      S step = fresh.get();
      samples.forEach(sample -> next.apply(step, sample));
      return result.apply(step);
    }

    double[] inPieces(List<Taken> samples, Set<Integer> cuts, BiConsumer<S, S> merging) {
      S all = fresh.get();
      S piece = fresh.get();
      for (Taken sample : samples) {
        if (cuts.contains(sample.index)) {
          merging.accept(all, Restored.from(piece));
          piece = fresh.get();
        }
        next.apply(piece, sample);
      }
      merging.accept(all, piece);
      return result.apply(all);
    }
  }

  private static List<Step<?>> steps() {
    return Stream.of(charts(), tests(), estimators(), vectors()).flatMap(List::stream).toList();
  }

  private static List<Step<?>> charts() {
    IndividualsLimits individuals = new IndividualsLimits(20, 0.5);
    LaneProfile profile = new LaneProfile(new double[] {-1, -0.5, 0, 0.5, 1}, 90, 90);
    ThreeWayLimits threeWay = new ThreeWayLimits(profile, individuals, 0.2);
    return List.of(
        chart(
            () -> new Ewma(new EwmaDesign(0.2, 2.86, EwmaDesign.Limits.EXACT)),
            (chart, sample) -> chart.next(sample.mean() - 20)),
        chart(
            () -> new Cusum(CusumDesign.of(0.5, 4.77)),
            (chart, sample) -> chart.next(sample.mean() - 20)),
        chart(
            () -> new IndividualsChart(individuals), (chart, sample) -> chart.next(sample.mean())),
        chart(() -> new ThreeWayChart(threeWay), (chart, sample) -> chart.next(sample.um.clone())),
        chart(() -> new ResidualChart(20, 0.4, 0.5), (chart, sample) -> chart.add(sample.mean())),
        chart(
            () -> new MeanRangeLimits(20, 1),
            (limits, sample) -> limits.plot(Subgroup.of(sample.um, 5))),
        chart(
            () -> new MeanDeviationLimits(20, 1),
            (limits, sample) -> limits.plot(Subgroup.of(sample.um, 5))),
        chart(
            StepsSurviveACutTest::composition,
            (chart, sample) -> chart.tSquared(sample.um) + " " + chart.explain(sample.um)));
  }

  private static CompositionChart composition() {
    CompositionBaseline baseline = new CompositionBaseline(5);
    samples(new Random(4)).forEach(sample -> baseline.add(sample.um));
    return baseline.chart(CovarianceEstimate.SAMPLE).orElseThrow();
  }

  private static List<Step<?>> tests() {
    return List.of(
        chart(ZoneTests::new, (test, sample) -> test.next(2 * (sample.mean() - 20))),
        chart(SeriesTests::new, (test, sample) -> test.next(2 * (sample.mean() - 20), 0.5)),
        chart(
            () -> new SeriesTests(TestSet.ALL, dev.filmward.chart.ChartKind.RANGE),
            (test, sample) -> test.next(2 * (sample.mean() - 20), 0.5)));
  }

  private static List<Step<?>> estimators() {
    return List.of(
        estimator(
            Baseline::new,
            (sum, sample) -> sum.add(Subgroup.of(sample.um, 2 + sample.index % 4)),
            sum -> new double[] {sum.centre(), sum.rangeBar(), sum.sigmaWithin().orElseThrow()},
            Baseline::merge),
        estimator(
            DeviationBaseline::new,
            (sum, sample) -> sum.add(Subgroup.of(sample.um, 2 + sample.index % 4)),
            sum -> new double[] {sum.centre(), sum.pooledDeviation().orElseThrow()},
            DeviationBaseline::merge),
        estimator(
            IndividualsBaseline::new,
            (sum, sample) -> sum.add(sample.mean()),
            sum -> new double[] {sum.centre(), sum.movingRangeBar()},
            IndividualsBaseline::merge),
        estimator(
            CompensatedSum::new,
            (sum, sample) -> sum.add(sample.mean()),
            sum -> new double[] {sum.value()},
            CompensatedSum::add),
        estimator(
            Moments::new,
            (sum, sample) -> sum.add(sample.mean()),
            sum -> new double[] {sum.mean(), sum.sumOfSquares()},
            Moments::merge),
        estimator(
            OneWayAnova::new,
            (sum, sample) -> sum.addGroup(moments(sample)),
            sum -> new double[] {sum.table().f(), sum.table().p()},
            OneWayAnova::merge),
        estimator(
            SampleQuantiles::new,
            (sum, sample) -> sum.add(sample.mean()),
            SampleQuantiles::ordered,
            SampleQuantiles::merge),
        estimator(
            () -> new Autocorrelation(3),
            (sum, sample) -> sum.add(sample.mean()),
            sum -> new double[] {sum.lag1(), sum.at(2), sum.at(3)},
            Autocorrelation::append),
        estimator(
            () -> new MeanSeries(100),
            (series, sample) -> series.add(sample.at(), sample.mean()),
            StepsSurviveACutTest::changeAndMeans,
            MeanSeries::append));
  }

  private static Moments moments(Taken sample) {
    Moments group = new Moments();
    Arrays.stream(sample.um).forEach(group::add);
    return group;
  }

  /** What is calculated from the window of a series, and the window itself. */
  private static double[] changeAndMeans(MeanSeries series) {
    double[] figures = new double[series.size() + 2];
    for (int i = 0; i < series.size(); i++) {
      figures[i] = series.mean(i);
    }
    Optional<Change> change = Change.in(series);
    figures[series.size()] = change.map(found -> found.size().value()).orElse(0.0);
    figures[series.size() + 1] = series.at(0).getEpochSecond();
    return figures;
  }

  private static List<Step<?>> vectors() {
    return List.of(
        estimator(
            () -> new LaneBaseline(5),
            (sum, sample) -> sum.add(sample.um.clone()),
            sum -> new double[] {sum.profile().effect(2), sum.profile().sigmaResidual()},
            LaneBaseline::merge),
        estimator(
            () -> new ThreeWayBaseline(new LaneProfile(new double[] {-1, -1, 0, 1, 1}, 9, 9)),
            (sum, sample) -> sum.add(sample.um.clone()),
            sum -> new double[] {sum.limits().orElseThrow().level(5).upper()},
            ThreeWayBaseline::merge),
        estimator(
            () -> new CrossMoments(5),
            (sum, sample) -> sum.add(sample.um),
            sum -> sum.covariance()[3],
            CrossMoments::merge),
        estimator(
            () -> new WebVariation(5, 20),
            (sum, sample) -> sum.add(sample.um),
            StepsSurviveACutTest::components,
            WebVariation::merge),
        estimator(
            CapabilityTally::ofMoments,
            (tally, sample) -> tally.add(LANES, sample.um),
            tally -> new double[] {tally.samples(), tally.sigmaWithin().orElseThrow()},
            CapabilityTally::merge),
        estimator(
            CapabilityTally::keepingReadings,
            (tally, sample) -> tally.add(LANES, sample.um),
            tally -> new double[] {tally.samples(), tally.sigmaWithin().orElseThrow()},
            CapabilityTally::merge),
        estimator(
            () -> new VectorBaseline(5),
            (sum, sample) -> sum.add(sample.um),
            sum -> new double[] {sum.reference(CovarianceEstimate.SUCCESSIVE).covariance(1, 3)},
            VectorBaseline::merge),
        estimator(
            () -> new SubgroupVectorBaseline(2),
            (sum, sample) ->
                sum.add(
                    new double[][] {{sample.um[0], sample.um[1]}, {sample.um[2], sample.um[3]}}),
            sum -> new double[] {sum.reference().covariance(0, 1), sum.reference().mean(1)},
            SubgroupVectorBaseline::merge),
        estimator(
            () -> new CompositionBaseline(5),
            (sum, sample) -> sum.add(sample.um),
            sum ->
                new double[] {
                  sum.chart(CovarianceEstimate.SAMPLE)
                      .orElseThrow()
                      .tSquared(new double[] {20, 21, 19, 20, 22})
                },
            CompositionBaseline::merge),
        estimator(
            () -> new LayerCorrelations(5),
            (sum, sample) -> sum.add(sample.um),
            sum ->
                sum.pairs().stream()
                    .mapToDouble(pair -> pair.logRatio().orElseThrow().lower())
                    .toArray(),
            LayerCorrelations::merge));
  }

  private static double[] components(WebVariation sum) {
    var parts = sum.components().orElseThrow();
    return new double[] {parts.machineDirection(), parts.crossDirection(), parts.residual()};
  }

  private static <S extends Serializable> Step<S> chart(
      Supplier<S> fresh, BiFunction<S, Taken, Object> next) {
    return new Step<>(fresh, next, unused -> new double[0], Optional.empty());
  }

  private static <S extends Serializable> Step<S> estimator(
      Supplier<S> fresh,
      BiConsumer<S, Taken> add,
      Function<S, double[]> result,
      BiConsumer<S, S> merge) {
    return new Step<>(
        fresh,
        (step, sample) -> {
          add.accept(step, sample);
          return "";
        },
        result,
        Optional.of(merge));
  }

  private static List<Taken> samples(Random random) {
    List<Taken> samples = new ArrayList<>();
    for (int i = 0; i < SAMPLES; i++) {
      double level = 20 + 0.4 * random.nextGaussian() + (i > 80 ? 1 : 0);
      double[] um = new double[5];
      for (int lane = 0; lane < 5; lane++) {
        um[lane] = level + 0.3 * (lane - 2) + random.nextGaussian();
      }
      samples.add(new Taken(i, um));
    }
    return samples;
  }

  private static Set<Integer> cuts(Random random) {
    Set<Integer> cuts = new TreeSet<>();
    for (int i = 0; i < 6; i++) {
      cuts.add(1 + random.nextInt(SAMPLES - 1));
    }
    return cuts;
  }

  @TestFactory
  Stream<DynamicTest> savedAndReadBackItGoesOnToTheBit() {
    long seed = System.nanoTime();
    return steps().stream()
        .map(
            step ->
                DynamicTest.dynamicTest(
                    step.name() + ", seed " + seed,
                    () -> {
                      Random random = new Random(seed);
                      List<Taken> samples = samples(random);
                      assertThat(step.run(samples, cuts(random)))
                          .isEqualTo(step.run(samples, Set.of()));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> inPiecesItIsWhatItIsInOne() {
    long seed = System.nanoTime();
    return steps().stream()
        .filter(step -> step.merge.isPresent())
        .map(
            step ->
                DynamicTest.dynamicTest(
                    step.name() + ", seed " + seed, () -> assertMerges(step, new Random(seed))));
  }

  private static <S extends Serializable> void assertMerges(Step<S> step, Random random) {
    List<Taken> samples = samples(random);
    double[] expected = step.inOne(samples);
    double[] merged = step.inPieces(samples, cuts(random), step.merge.orElseThrow());
    assertThat(merged).hasSameSizeAs(expected);
    for (int i = 0; i < merged.length; i++) {
      assertThat(merged[i]).isCloseTo(expected[i], within(1e-11 * (1 + Math.abs(expected[i]))));
    }
  }

  /** A new step must be put on the list above. */
  @Test
  void noStepIsForgotten() {
    Set<String> known = steps().stream().map(Step::name).collect(Collectors.toSet());
    Set<String> found =
        new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(
                    "dev.filmward.chart",
                    "dev.filmward.rule",
                    "dev.filmward.drift",
                    "dev.filmward.composition",
                    "dev.filmward.variation",
                    "dev.filmward.capability")
                .stream()
                .filter(type -> type.isAssignableTo(Serializable.class) && !type.isInterface())
                .filter(type -> !type.isRecord() && !type.isEnum())
                .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(type -> !type.isAssignableTo(Throwable.class))
                .map(JavaClass::getSimpleName)
                .filter(name -> !FROZEN.contains(name))
                .collect(Collectors.toSet());
    assertThat(known).containsAll(found);
  }
}
