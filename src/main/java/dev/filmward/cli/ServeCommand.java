package dev.filmward.cli;

import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.AlarmClock;
import dev.filmward.pipeline.DailyThinning;
import dev.filmward.pipeline.Inbox;
import dev.filmward.pipeline.MappingBook;
import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.Telling;
import dev.filmward.telling.Post;
import dev.filmward.web.DoorOptions;
import dev.filmward.web.WebServer;
import dev.filmward.web.WebServer.Options;
import dev.filmward.web.WebServer.Options.Purpose;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The dashboard on the plant's own data. */
@Command(
    name = "serve",
    description = "The dashboard on your data. Files put into DATA/inbox are read at once.",
    mixinStandardHelpOptions = true)
final class ServeCommand implements Callable<Integer> {
  @Option(
      names = "--structures",
      paramLabel = "FILE",
      description = "Structures (YAML) to learn first; they are kept for later.")
  private @Nullable Path structures;

  @Option(
      names = "--keep-readings",
      paramLabel = "DAYS",
      description =
          "Once a day thins samples that were taken more than so many days ago to their figures;"
              + " readings are kept for good unless given.")
  private @Nullable Integer daysKept;

  @Spec private @Nullable CommandSpec spec;

  @Mixin private MappingOption mapping = new MappingOption();
  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();
  @Mixin private LogOption log = new LogOption();
  @Mixin private ListenOptions listen = new ListenOptions();
  @Mixin private DoorsOption doors = new DoorsOption();

  @Override
  public Integer call() throws IOException, MappingFault, StructuresFault, InterruptedException {
    if (daysKept != null && daysKept < 1 && spec != null) {
      throw new ParameterException(spec.commandLine(), "--keep-readings is at least 1.");
    }
    DoorOptions door = doors.options();
    log.apply();
    MappingBook mappings = mapping.book(data.folder);
    Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone, mappings);
    if (structures != null) {
      plant.learnStructuresAtStart(structures.toString(), Files.readAllBytes(structures));
    }
    Path folder = data.folder.resolve("inbox");
    Options options = new Options(listen.host, listen.port, Purpose.PLANT, door);
    FirstStart.warnWhereOpen(options);
    try (Serving serving = new Serving(plant)) {
      serving.hold(WebServer.start(plant, options));
      serving.hold(AlarmClock.start(plant));
      serving.hold(Inbox.watch(plant, folder));
      if (daysKept != null) {
        serving.hold(DailyThinning.start(plant, daysKept));
      }
      serving.hold(Telling.start(plant, Post.real(), new Passwords(System.getenv())));
      serving.hold(Serving.reports(plant));
      FirstStart.inviteAdministrator(plant);
      serving.announce("Filmward watches " + folder, options);
      serving.untilStopped();
    }
    return ExitStatus.DONE;
  }
}
