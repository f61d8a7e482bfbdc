package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.DashboardLoad.Plan;
import dev.filmward.web.DashboardLoad.Report;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * 200 open dashboards, 20 samples and 50 page requests a second, against a server in this process.
 * What must never fail is asked of every round; times, which another program on the machine can
 * spoil, of the best of three.
 */
class DashboardLoadTest {
  private static final Plan PLAN = new Plan(200, 20, 50, 8);
  private static final int ROUNDS = 3;

  @TempDir private Path folder;

  @Test
  void everyPageHearsOfEverySampleInASecondWhilePagesAreAnsweredInATenth() throws Exception {
    try (ServedPlant served = ServedPlant.in(folder)) {
      DashboardLoad load =
          new DashboardLoad(served.port(), Map.of("Cookie", served.api().cookie()));
      load.prepare();
      load.run(new Plan(20, 20, 50, 3));
      double slowestEvent = Double.MAX_VALUE;
      double answer = Double.MAX_VALUE;
      for (int round = 0; round < ROUNDS && (slowestEvent > 1000 || answer > 100); round++) {
        Report report = load.run(PLAN);
        System.out.println(
            "REPORT answers "
                + report.answersMs().length
                + " p50 "
                + report.answer(0.5)
                + " p99 "
                + report.answer(0.99)
                + " samples "
                + report.samplesMs().length
                + " p50 "
                + report.sample(0.5)
                + " p99 "
                + report.sample(0.99)
                + " events "
                + report.eventsMs().length
                + " p50 "
                + report.event(0.5)
                + " max "
                + report.event(1)
                + " missing "
                + report.missing()
                + " failed "
                + report.failed());
        assertThat(report.failed()).as("requests refused").isZero();
        assertThat(report.missing()).as("events that did not come to a page").isZero();
        assertThat(report.eventsMs().length).isGreaterThan(150 * PLAN.dashboards());
        slowestEvent = Math.min(slowestEvent, report.event(1));
        answer = Math.min(answer, report.answer(0.99));
      }
      assertThat(slowestEvent).as("ms until the last page heard").isLessThan(1000);
      assertThat(answer).as("ms, p99 of pages").isLessThan(100);
    }
  }
}
