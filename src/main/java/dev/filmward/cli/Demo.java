package dev.filmward.cli;

import dev.filmward.alarm.Alarm;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.diagnosis.Causes;
import dev.filmward.film.Sample;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.Explanation;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.Plant;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.FileEntry.Sender;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Fills a plant with the sample runs, as if they had ended just now, and lets a simulated gauge on
 * each line go on from there.
 */
final class Demo {
  private static final Duration RECORDED_INTERVAL = Duration.ofMinutes(15);
  private static final int BASELINE = 25;

  private static final Map<String, String> CAUSES =
      Map.of(
          "pouch-haul-off-step", "haul-off or winder speed changed",
          "nine-layer-lane-off", "die bolt, lip or air ring");

  private final Plant plant;
  private final Duration interval;
  private final Map<String, SampleRun> lastOfLine = new HashMap<>();

  Demo(Plant plant, Duration interval) {
    this.plant = plant;
    this.interval = interval;
  }

  /** Loads the sample runs, where a data folder of an earlier demonstration has them not yet. */
  void load() throws IOException, StructuresFault {
    List<SampleRun> runs = SampleRuns.all();
    runs.forEach(run -> lastOfLine.put(run.line(), run));
    if (isLoaded(runs)) {
      return;
    }
    for (SampleRun run : runs) {
      load(run);
      if (!run.equals(lastOfLine.get(run.line()))) {
        dealWithAlarms(run);
      }
    }
    new DemoMisreads(plant, interval).load();
    new DemoStudy(plant).load();
  }

  private boolean isLoaded(List<SampleRun> runs) {
    return runs.stream().allMatch(run -> plant.hasLimits(run.line(), run.structure().code()));
  }

  /** Each line's gauge writes a file a sample into the inbox. */
  LiveGauges startGauges(Path inbox) {
    return LiveGauges.start(List.copyOf(lastOfLine.values()), inbox, interval);
  }

  private void load(SampleRun run) throws IOException, StructuresFault {
    String folder = "/sample-runs/" + run.folder() + "/";
    try (InputStream yaml = open(folder + "structures.yaml")) {
      plant.learnStructures(run.folder() + "/structures.yaml", yaml.readAllBytes());
    }
    DemoTime time =
        new DemoTime(endOf(run.line()), plant.clock().instant(), RECORDED_INTERVAL, interval);
    plant.read(
        new IncomingFile(
            run.folder() + "/readings.csv",
            "demo",
            new Sender("demo data", ""),
            () -> open(folder + "readings.csv"),
            time::before));
    plant.freezeLimits(
        run.line(),
        run.structure().code(),
        BASELINE,
        new Decision(
            DemoPeople.ENGINEER,
            "quiet start of the run, first " + BASELINE + " samples",
            plant.clock().instant()));
  }

  private Instant endOf(String line) {
    SampleRun last = lastOfLine.get(line);
    if (last == null) {
      throw new IllegalStateException("no run on " + line);
    }
    List<Sample> samples = last.samples();
    return samples.get(samples.size() - 1).takenAt();
  }

  /** The story of a run that is over has been dealt with. */
  private void dealWithAlarms(SampleRun run) {
    String code = run.structure().code();
    List<Alarm> alarms =
        plant.store().read(tables -> tables.alarms().open()).stream()
            .filter(alarm -> alarm.subject().structure().equals(code))
            .toList();
    for (Alarm alarm : alarms) {
      plant.acknowledge(alarm.id(), DemoPeople.SHIFT_LEAD);
      plant
          .alarmDesk()
          .explain(
              alarm.id(),
              new Explanation(
                  CAUSES.getOrDefault(run.folder(), Causes.NOT_FOUND_YET),
                  "",
                  "put right before the next order",
                  DemoPeople.SHIFT_LEAD));
    }
  }

  private static InputStream open(String resource) throws FileNotFoundException {
    InputStream in = Demo.class.getResourceAsStream(resource);
    if (in == null) {
      throw new FileNotFoundException("the sample runs are not in the jar: " + resource);
    }
    return in;
  }
}
