package dev.filmward.rule;

import java.io.Serializable;
import java.util.List;

/**
 * Which tests of a characteristic are shown on its charts, and which of those raise alarms.
 * Immutable.
 *
 * @param alarming none that is not shown
 */
public record TestChoice(TestSet shown, TestSet alarming) implements Serializable {
  private static final long serialVersionUID = 1L;

  /** What holds until somebody chooses: the standard tests are shown and raise alarms. */
  public static final TestChoice STANDARD = new TestChoice(TestSet.STANDARD, TestSet.STANDARD);

  public TestChoice {
    if (!shown.covers(alarming)) {
      throw new IllegalArgumentException("a test that raises alarms must be shown too");
    }
  }

  /** Those signals whose tests are shown. */
  public List<Signal> shown(List<Signal> signals) {
    return signals.stream().filter(shown::has).toList();
  }

  /** Those signals whose tests raise alarms. */
  public List<Signal> alarming(List<Signal> signals) {
    return signals.stream().filter(alarming::has).toList();
  }
}
