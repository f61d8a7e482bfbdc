package dev.filmward.simulate;

import java.util.List;

/** Writes what a sample run must show as YAML. */
final class ExpectedYaml {
  private static final String HEAD =
      """
      # The alarms that this run must raise, all and only. Limits come from the first 25 samples and
      # stay frozen. Each layer named goes out of control for the first time, on the side named
      # (spread: on the range chart), from firstSampleFrom to firstSampleTo, both included, so that
      # the alarm opens there. What is not named here is never out of control.
      """;

  private final SampleRun run;

  ExpectedYaml(SampleRun run) {
    this.run = run;
  }

  String of(List<ExpectedAlarm> alarms, Counts counts) {
    StringBuilder yaml = new StringBuilder(HEAD);
    yaml.append(alarms.isEmpty() ? "alarms: []\n" : "alarms:\n");
    for (ExpectedAlarm alarm : alarms) {
      yaml.append("  - line: ").append(run.line()).append('\n');
      property(yaml, "structure", run.structure().code());
      property(yaml, "layers", "[" + String.join(", ", alarm.layers()) + "]");
      property(yaml, "side", alarm.side().word());
      property(yaml, "firstSampleFrom", alarm.firstSampleFrom());
      property(yaml, "firstSampleTo", alarm.firstSampleTo());
    }
    yaml.append("rows: ").append(counts.rows()).append('\n');
    yaml.append("readings: ").append(counts.readings()).append('\n');
    yaml.append("missing: ").append(counts.missing()).append('\n');
    yaml.append("quarantined: ").append(counts.quarantined()).append('\n');
    return yaml.toString();
  }

  private static void property(StringBuilder yaml, String name, String value) {
    yaml.append("    ").append(name).append(": ").append(value).append('\n');
  }
}
