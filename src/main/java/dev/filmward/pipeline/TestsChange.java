package dev.filmward.pipeline;

import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.AlarmDelays.Delay;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.TestChoice;
import java.util.HashMap;
import java.util.Map;

/**
 * What is to be another way with the tests of a production; the rest stays.
 *
 * @param choices by the position of the characteristic, 0 for the total
 * @param delays by test, for all characteristics
 */
public record TestsChange(Map<Integer, TestChoice> choices, Map<ChartTest, Delay> delays) {
  public TestsChange {
    choices = Map.copyOf(choices);
    delays = Map.copyOf(delays);
  }

  /** Only other choices. */
  public static TestsChange of(Map<Integer, TestChoice> choices) {
    return new TestsChange(choices, Map.of());
  }

  AlarmDelays delays(AlarmDelays before) {
    Map<ChartTest, Delay> all = new HashMap<>(before.delays());
    all.putAll(delays);
    all.values().removeIf(Delay.STANDARD::equals);
    return new AlarmDelays(all);
  }
}
