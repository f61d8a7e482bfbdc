package dev.filmward.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.MappingBook;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Counts;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads files into the database; a file is reported when it is durable. */
@Command(
    name = "import",
    description = "Reads files of readings into the data folder.",
    mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(arity = "0..*", paramLabel = "FILE", description = "Files of readings (CSV).")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--structures",
      paramLabel = "FILE",
      description = "Structures (YAML) to learn first; they are kept for later.")
  private @Nullable Path structures;

  @Option(names = "--format", description = "${COMPLETION-CANDIDATES}; text unless given.")
  private Format format = Format.TEXT;

  @Option(names = "--strict", description = "Exit with status 3 where any row is quarantined.")
  private boolean strict;

  @Mixin private SenderOption sender = new SenderOption();
  @Mixin private MappingOption mapping = new MappingOption();
  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  private final ObjectMapper mapper = new ObjectMapper();

  /** How results are written. */
  enum Format {
    TEXT,
    JSON
  }

  @Override
  public Integer call() throws IOException, MappingFault, StructuresFault {
    if (files.isEmpty() && structures == null) {
      throw new ParameterException(
          command().commandLine(), "What shall be read? Name a FILE, or --structures FILE.");
    }
    for (Path file : files) {
      if (!Files.isRegularFile(file)) {
        throw new NoSuchFileException(file.toString());
      }
    }
    MappingBook mappings = mapping.book(data.folder);
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    boolean refused = false;
    try (Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone, mappings)) {
      if (structures != null) {
        plant.learnStructures(structures.toString(), Files.readAllBytes(structures));
      }
      for (Path file : files) {
        FileEntry entry =
            plant.read(
                new IncomingFile(file.toString(), "import", () -> Files.newInputStream(file))
                    .from(sender.sender()));
        out.println(format == Format.JSON ? json(entry) : text(entry));
        refused |= entry.refusal().isPresent() || (strict && entry.counts().quarantined() > 0);
      }
    }
    return refused ? ExitStatus.REFUSED : ExitStatus.DONE;
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("run through the command line");
    }
    return spec;
  }

  static String text(FileEntry entry) {
    if (entry.refusal().isPresent()) {
      return entry.name() + ": refused. " + entry.refusal().get();
    }
    Counts counts = entry.counts();
    String line =
        String.format(
                Locale.ROOT,
                "%s: %d rows, %d readings (%d new, %d known, %d corrected), %d missing,"
                    + " %d quarantined",
                entry.name(),
                counts.rows(),
                counts.readings(),
                counts.arrivals().fresh(),
                counts.arrivals().known(),
                counts.arrivals().corrected(),
                counts.missing(),
                counts.quarantined())
            + held(entry);
    return entry.notes().isEmpty() ? line : line + "\n  " + entry.notes().replace("\n", "\n  ");
  }

  private static String held(FileEntry entry) {
    return entry.counts().quarantined() == 0
        ? ""
        : "; to mend them: filmward quarantine " + entry.id();
  }

  private String json(FileEntry entry) {
    Counts counts = entry.counts();
    ObjectNode answer = mapper.createObjectNode();
    ObjectNode file = answer.putArray("files").addObject();
    file.put("name", entry.name())
        .put("rows", counts.rows())
        .put("readings", counts.readings())
        .put("missing", counts.missing())
        .put("quarantined", counts.quarantined())
        .put("new", counts.arrivals().fresh())
        .put("known", counts.arrivals().known())
        .put("corrected", counts.arrivals().corrected());
    entry.refusal().ifPresent(why -> file.put("refusal", why));
    return answer.toString();
  }
}
