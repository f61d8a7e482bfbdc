package dev.filmward.cli;

import dev.filmward.film.Sample;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SimulatedGauge;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Simulated gauges that go on with their runs: a sample and a file each, at a steady pace. */
final class LiveGauges implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(LiveGauges.class);

  private final Path inbox;
  private final ScheduledExecutorService pace =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "live-gauges");
            thread.setDaemon(true);
            return thread;
          });

  private LiveGauges(Path inbox) {
    this.inbox = inbox;
  }

  static LiveGauges start(List<SampleRun> runs, Path inbox, Duration interval) {
    LiveGauges gauges = new LiveGauges(inbox);
    long apart = interval.toMillis() / Math.max(1, runs.size());
    for (int i = 0; i < runs.size(); i++) {
      SimulatedGauge gauge = runs.get(i).gauge();
      ScheduledFuture<?> unused =
          gauges.pace.scheduleAtFixedRate(
              () -> gauges.measure(gauge),
              interval.toMillis() + apart * i,
              interval.toMillis(),
              TimeUnit.MILLISECONDS);
    }
    return gauges;
  }

  @Override
  public void close() {
    pace.shutdownNow();
  }

  private void measure(SimulatedGauge gauge) {
    Sample sample = gauge.next();
    String name = sample.key().line().replace(' ', '-') + "-" + sample.key().sample() + ".csv";
    Path part = inbox.resolve(name + ".part");
    try {
      Files.writeString(part, csv(sample), StandardCharsets.UTF_8);
      Files.move(part, inbox.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      LOG.warn("The simulated gauge cannot write {}", part, e);
    }
  }

  private static String csv(Sample sample) {
    Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer,thickness_um\n");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      for (int position = 1; position <= sample.layers(); position++) {
        csv.append(now).append(',').append(sample.key().line()).append(',');
        csv.append(sample.key().structure()).append(',').append(sample.key().roll()).append(',');
        csv.append(sample.key().sample()).append(',').append(sample.lane(lane)).append(',');
        csv.append(position).append(',');
        if (sample.isMeasured(position, lane)) {
          csv.append(sample.thicknessUm(position, lane));
        }
        csv.append('\n');
      }
    }
    return csv.toString();
  }
}
