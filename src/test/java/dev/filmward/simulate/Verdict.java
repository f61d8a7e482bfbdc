package dev.filmward.simulate;

import dev.filmward.film.Sample;
import dev.filmward.simulate.ControlCheck.Finding;
import dev.filmward.simulate.ControlCheck.Twice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What is wrong with a run's list of expected alarms, in words; empty when its samples raise them
 * all and nothing else. Sigma is made 1 % smaller where nothing may be found and 1 % larger where
 * something must be, so that the answer does not hang on the last digit of a limit.
 */
final class Verdict {
  private final SampleRun run;
  private final List<String> complaints = new ArrayList<>();

  private Verdict(SampleRun run) {
    this.run = run;
  }

  static List<String> complaints(SampleRun run, List<Sample> samples) {
    Verdict verdict = new Verdict(run);
    Map<String, List<double[]>> series = SeriesOf.samples(run.structure(), samples);
    series.forEach(verdict::checkOnly);
    for (ExpectedAlarm alarm : run.alarms()) {
      alarm.layers().forEach(name -> verdict.checkRaised(name, series.get(name), alarm));
    }
    return verdict.complaints;
  }

  private void checkOnly(String name, List<double[]> subgroups) {
    for (Finding finding : ControlCheck.findings(subgroups, 0.99, Twice.ANY_TEST)) {
      if (run.alarms().stream().noneMatch(alarm -> allows(alarm, name, finding))) {
        complaints.add(name + ": " + finding + " is not expected");
      }
    }
  }

  private static boolean allows(ExpectedAlarm alarm, String name, Finding finding) {
    return alarm.layers().contains(name)
        && alarm.side() == finding.side()
        && Rolls.sample(finding.index()).compareTo(alarm.firstSampleFrom()) >= 0;
  }

  private void checkRaised(String name, List<double[]> subgroups, ExpectedAlarm alarm) {
    boolean isRaised =
        ControlCheck.findings(subgroups, 1.01, Twice.SAME_TEST_AND_SIDE).stream()
            .anyMatch(
                finding ->
                    allows(alarm, name, finding)
                        && Rolls.sample(finding.index()).compareTo(alarm.firstSampleTo()) <= 0);
    if (!isRaised) {
      complaints.add(name + ": no " + alarm.side() + " until " + alarm.firstSampleTo());
    }
  }
}
