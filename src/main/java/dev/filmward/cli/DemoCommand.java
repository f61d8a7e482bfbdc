package dev.filmward.cli;

import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.AlarmClock;
import dev.filmward.pipeline.Inbox;
import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.Telling;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.telling.Post;
import dev.filmward.web.WebServer;
import dev.filmward.web.WebServer.Options;
import dev.filmward.web.WebServer.Options.Purpose;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The dashboard on the sample runs, with a live simulated gauge on each line. */
@Command(
    name = "demo",
    description = "The dashboard on sample data, with a live gauge that adds samples.",
    mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "Where to keep the demo's data; a folder that is removed at the end unless given.")
  private @Nullable Path data;

  @Option(
      names = "--interval",
      paramLabel = "SECONDS",
      description = "Time between samples, which stands for 15 minutes; 15 unless given.")
  private int interval = 15;

  @Mixin private DatabaseOption database = new DatabaseOption();
  @Mixin private ListenOptions listen = new ListenOptions();

  @Override
  public Integer call() throws IOException, StructuresFault, InterruptedException {
    Path folder = data == null ? Files.createTempDirectory("filmward-demo") : data;
    Plant plant = new Plant(database.open(folder), Clock.systemUTC(), SampleRuns.PLANT_ZONE);
    DemoPeople people = new DemoPeople(plant);
    Options options =
        new Options(listen.host, listen.port, Purpose.DEMONSTRATION, people.doors(listen.host));
    FirstStart.warnWhereOpen(options);
    Path inbox = folder.resolve("inbox");
    try (Serving serving = new Serving(plant)) {
      if (data == null) {
        serving.afterwards(() -> Folders.delete(folder));
      }
      serving.hold(WebServer.start(plant, options));
      Demo demo = new Demo(plant, Duration.ofSeconds(Math.max(1, interval)));
      demo.load();
      serving.hold(AlarmClock.start(plant));
      serving.hold(Inbox.watch(plant, inbox));
      serving.hold(demo.startGauges(inbox));
      serving.hold(Telling.start(plant, Post.real(), new Passwords(System.getenv())));
      serving.hold(Serving.reports(plant));
      people.tellPasswords();
      serving.announce("Filmward shows its sample runs", options);
      serving.untilStopped();
    }
    return ExitStatus.DONE;
  }
}
