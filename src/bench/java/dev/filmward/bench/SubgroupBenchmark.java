package dev.filmward.bench;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.TestSet;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What one subgroup of five readings costs, from the readings to the set of signals, beside two
 * yardsticks: only reading the readings, and the same answers from lists of earlier points.
 *
 * <p>{@code mvn -Pbench test-compile exec:exec@bench}; look at {@code gc.alloc.rate.norm} for the
 * bytes a subgroup.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class SubgroupBenchmark {
  private static final int SUBGROUPS = 1 << 12;
  private static final long SEED = 60;

  private final double[][] readingsUm = readings();
  private final MeanRangeLimits limits = new MeanRangeLimits(25, 0.3);
  private final SeriesTests fourTests = new SeriesTests();
  private final SeriesTests allTests = new SeriesTests(TestSet.ALL, ChartKind.RANGE);
  private final List<Double> earlier = new ArrayList<>();
  private int at;

  private static double[][] readings() {
    Random random = new Random(SEED);
    double[][] readings = new double[SUBGROUPS][5];
    for (double[] subgroup : readings) {
      for (int lane = 0; lane < subgroup.length; lane++) {
        subgroup[lane] = 25 + 0.3 * random.nextGaussian();
      }
    }
    return readings;
  }

  private double[] next() {
    at = (at + 1) & (SUBGROUPS - 1);
    return readingsUm[at];
  }

  /** Yardstick: the readings are looked at and nothing is done. */
  @Benchmark
  public double onlyReadings() {
    double sum = 0;
    for (double reading : next()) {
      sum += reading;
    }
    return sum;
  }

  @Benchmark
  public int meanRangeAndFourTests() {
    return judged(fourTests);
  }

  /** The same for each of the five readings. */
  @Benchmark
  @OperationsPerInvocation(5)
  public int meanRangeAndFourTestsAReading() {
    return judged(fourTests);
  }

  @Benchmark
  public int meanRangeAndAllTests() {
    return judged(allTests);
  }

  private int judged(SeriesTests tests) {
    Subgroup subgroup = Subgroup.of(next(), 5);
    return tests.next(limits.zMean(5, subgroup.mean()), limits.zRange(5, subgroup.range()));
  }

  /** With the point and the list of signals as objects, as a stream engine hands them on. */
  @Benchmark
  public Object pointAndSignals() {
    return fourTests.next(limits.plot(Subgroup.of(next(), 5)));
  }

  /** Yardstick: lists of earlier points, looked through for each test. */
  @Benchmark
  public int listsOfEarlierPoints() {
    Subgroup subgroup = Subgroup.of(next(), 5);
    earlier.add(limits.zMean(5, subgroup.mean()));
    if (earlier.size() > 8) {
      earlier.remove(0);
    }
    int signals = limits.zRange(5, subgroup.range()) > 3 ? 1 : 0;
    for (int side = -1; side <= 1; side += 2) {
      signals |= atLeast(1, 1, 3, side) | atLeast(2, 3, 2, side);
      signals |= atLeast(4, 5, 1, side) | atLeast(8, 8, 0, side);
    }
    return signals;
  }

  private int atLeast(int points, int ofLast, double line, int side) {
    long beyond =
        earlier.subList(Math.max(0, earlier.size() - ofLast), earlier.size()).stream()
            .filter(z -> side * z > line)
            .count();
    return beyond >= points ? 2 : 0;
  }
}
