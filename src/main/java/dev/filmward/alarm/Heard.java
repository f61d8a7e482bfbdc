package dev.filmward.alarm;

import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.Signal;
import java.util.List;

/**
 * What the tests that may raise alarms say of one characteristic, at a sample and the ones before
 * it. Immutable.
 *
 * @param recent signals at this sample, at the one before it, and so on; at least this one
 * @param delays how long each test must speak, and be silent
 */
public record Heard(List<List<Signal>> recent, AlarmDelays delays) {
  public Heard {
    if (recent.isEmpty()) {
      throw new IllegalArgumentException("signals of this sample are missing");
    }
    recent = recent.stream().map(List::copyOf).toList();
  }

  /** Tests fulfilled at this sample. */
  public List<Signal> now() {
    return recent.get(0);
  }

  /** Whether a test speaks for a deviation now, and as many samples in a row did as it asks for. */
  boolean opens(Deviation deviation) {
    int inARow = inARow(deviation);
    return now().stream()
        .filter(signal -> says(signal, deviation))
        .anyMatch(signal -> delays.of(signal).opensAfter() <= inARow);
  }

  /** Whether a test speaks for a deviation now, or has not been silent for long enough. */
  boolean goesOn(Deviation deviation) {
    for (int back = 0; back < recent.size(); back++) {
      for (Signal signal : recent.get(back)) {
        if (says(signal, deviation) && back < delays.of(signal).returnsAfter()) {
          return true;
        }
      }
    }
    return false;
  }

  private int inARow(Deviation deviation) {
    int samples = 0;
    while (samples < recent.size() && says(recent.get(samples), deviation)) {
      samples++;
    }
    return samples;
  }

  static boolean says(List<Signal> signals, Deviation deviation) {
    return signals.stream().anyMatch(signal -> says(signal, deviation));
  }

  private static boolean says(Signal signal, Deviation deviation) {
    return Deviation.of(signal).filter(deviation::equals).isPresent();
  }
}
