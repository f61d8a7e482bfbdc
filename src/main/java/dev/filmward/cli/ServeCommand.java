package dev.filmward.cli;

import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.Inbox;
import dev.filmward.pipeline.MappingBook;
import dev.filmward.pipeline.Plant;
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
import picocli.CommandLine.Option;

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

  @Mixin private MappingOption mapping = new MappingOption();
  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();
  @Mixin private ListenOptions listen = new ListenOptions();

  @Override
  public Integer call() throws IOException, MappingFault, StructuresFault, InterruptedException {
    MappingBook mappings = mapping.book(data.folder);
    Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone, mappings);
    if (structures != null) {
      plant.learnStructures(structures.toString(), Files.readAllBytes(structures));
    }
    Path folder = data.folder.resolve("inbox");
    Options options = new Options(listen.host, listen.port, Purpose.PLANT);
    try (Serving serving = new Serving(plant)) {
      serving.hold(WebServer.start(plant, options));
      serving.hold(Inbox.watch(plant, folder));
      serving.announce("Filmward watches " + folder, listen.host);
      serving.untilStopped();
    }
    return ExitStatus.DONE;
  }
}
