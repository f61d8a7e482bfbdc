package dev.filmward.rule;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.ChartKind;
import dev.filmward.stats.Figures;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Map;
import java.util.Random;
import java.util.StringJoiner;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hand-made sequences after the statement of the tests by Nelson (1984). */
class PatternSequencesTest {
  private static final TestSet PATTERNS =
      new TestSet(
          EnumSet.range(SignalTest.TREND, SignalTest.ALTERNATION),
          EnumSet.noneOf(SignalTest.class));

  record Sequence(String name, double[] distances, String signals) {
    static Sequence of(Map<String, String> row) {
      double[] distances =
          Arrays.stream(row.get("distances").split(" ")).mapToDouble(Double::parseDouble).toArray();
      return new Sequence(row.get("name"), distances, row.get("signals"));
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Sequence> sequences() {
    return Figures.table(PatternSequencesTest.class, "pattern-sequences.csv").stream()
        .map(Sequence::of);
  }

  @ParameterizedTest
  @MethodSource("sequences")
  void signalsComeAtTheExpectedPointsAndNowhereElse(Sequence sequence) {
    assertThat(signals(sequence.distances)).isEqualTo(sequence.signals);
  }

  @ParameterizedTest
  @MethodSource("sequences")
  void theMirroredSequenceGivesTheMirroredSignals(Sequence sequence) {
    double[] mirrored = Arrays.stream(sequence.distances).map(distance -> -distance).toArray();
    String expected =
        sequence.signals.replace("high", "LOW").replace("low", "high").replace("LOW", "low");

    assertThat(signals(mirrored)).isEqualTo(expected);
  }

  private static String signals(double[] distances) {
    SeriesTests tests = new SeriesTests(PATTERNS, ChartKind.RANGE);
    StringJoiner text = new StringJoiner(" ");
    for (int point = 1; point <= distances.length; point++) {
      for (Signal signal : Signal.decode(tests.next(distances[point - 1]))) {
        text.add(point + ":" + signal.test().word() + ":" + signal.side().word());
      }
    }
    return text.toString();
  }

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  /** The definition read word by word over the whole history, with many ties. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void signalsAreThoseOfTheDefinition(long seed) {
    Random random = new Random(seed);
    double scale = 0.3 + 0.5 * random.nextInt(5);
    double swing = random.nextInt(3);
    double slope = 0.6 * random.nextInt(3);
    double[] distances = new double[120];
    SeriesTests tests = new SeriesTests(PATTERNS, ChartKind.RANGE);
    for (int i = 0; i < distances.length; i++) {
      double pattern = (i % 2 == 0 ? swing : -swing) + slope * (i % 9);
      distances[i] = Math.rint(4 * (scale * random.nextGaussian() + pattern - 2 * slope)) / 4;

      assertThat(tests.next(distances[i])).isEqualTo(defined(Arrays.copyOf(distances, i + 1)));
    }
  }

  private static int defined(double[] z) {
    Side side = z[z.length - 1] < 0 ? Side.LOW : Side.HIGH;
    return bit(isMonotone(last(z, 6), 1), SignalTest.TREND, Side.HIGH)
        | bit(isMonotone(last(z, 6), -1), SignalTest.TREND, Side.LOW)
        | bit(all(last(z, 15), true), SignalTest.STRATIFICATION, side)
        | bit(all(last(z, 8), false), SignalTest.MIXTURE, side)
        | bit(alternates(last(z, 14)), SignalTest.ALTERNATION, side);
  }

  private static int bit(boolean fulfilled, SignalTest test, Side side) {
    return fulfilled ? new Signal(ChartKind.XBAR, test, side).bit() : 0;
  }

  /** The last points, or none if there are not that many. */
  private static double[] last(double[] z, int points) {
    return z.length < points ? new double[0] : Arrays.copyOfRange(z, z.length - points, z.length);
  }

  private static boolean isMonotone(double[] z, double direction) {
    boolean monotone = z.length > 0;
    for (int i = 1; i < z.length; i++) {
      monotone &= direction * (z[i] - z[i - 1]) > 0;
    }
    return monotone;
  }

  private static boolean alternates(double[] z) {
    boolean alternates = z.length > 0;
    for (int i = 2; i < z.length; i++) {
      alternates &= (z[i] - z[i - 1]) * (z[i - 1] - z[i - 2]) < 0;
    }
    return alternates;
  }

  private static boolean all(double[] z, boolean within) {
    return z.length > 0 && Arrays.stream(z).allMatch(each -> (Math.abs(each) <= 1) == within);
  }
}
