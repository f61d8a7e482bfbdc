package dev.filmward.rule;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.ChartKind;
import dev.filmward.stats.Figures;
import java.util.Arrays;
import java.util.Map;
import java.util.StringJoiner;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hand-made sequences after the statement of the tests in the Western Electric handbook. */
class ZoneSequencesTest {

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
    return Figures.table(ZoneSequencesTest.class, "zone-sequences.csv").stream().map(Sequence::of);
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
    ZoneTests tests = new ZoneTests();
    StringJoiner text = new StringJoiner(" ");
    for (int point = 1; point <= distances.length; point++) {
      for (Signal signal : Signal.decode(tests.next(distances[point - 1]))) {
        assertThat(signal.chart()).isEqualTo(ChartKind.XBAR);
        text.add(point + ":" + signal.test().word() + ":" + signal.side().word());
      }
    }
    return text.toString();
  }
}
