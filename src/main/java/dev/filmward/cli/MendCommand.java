package dev.filmward.cli;

import dev.filmward.intake.FileRefused;
import dev.filmward.intake.LooseRows;
import dev.filmward.pipeline.HeldFile;
import dev.filmward.pipeline.MendReport;
import dev.filmward.pipeline.MendedText;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.HeldRow;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Submits rows in quarantine again, as a person mended them. */
@Command(
    name = "mend",
    description =
        "Submits rows again that could not be used: what quarantine printed, mended, each row in its"
            + " place.",
    mixinStandardHelpOptions = true)
final class MendCommand implements Callable<Integer> {
  private static final int LARGEST = 256 * 1024 * 1024;

  @Parameters(index = "0", paramLabel = "FILE_ID", description = "Number of the file.")
  private long fileId;

  @Parameters(index = "1", paramLabel = "EDITED", description = "What quarantine printed, mended.")
  private @Nullable Path edited;

  @Option(
      names = "--by",
      required = true,
      paramLabel = "NAME",
      description = "Who mended them; kept with each reading that they correct.")
  private String by = "";

  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException, FileRefused {
    byte[] bytes = read();
    try (Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone)) {
      HeldFile held = plant.openQuarantine(fileId, QuarantineCommand.MOST_ROWS);
      if (!held.obstacle().isEmpty()) {
        throw new FileRefused(held.obstacle());
      }
      return tell(plant.mend(fileId, texts(held, bytes), by));
    }
  }

  private byte[] read() throws IOException, FileRefused {
    if (edited == null) {
      throw new IllegalStateException("run through the command line");
    }
    try (InputStream in = Files.newInputStream(edited)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw new FileRefused(edited + " is larger than 256 MiB");
      }
      return bytes;
    }
  }

  private List<MendedText> texts(HeldFile held, byte[] bytes) throws IOException, FileRefused {
    LooseRows reader = held.reader().orElseThrow();
    Map<Long, HeldRow> byLine = new LinkedHashMap<>();
    held.rows().forEach(row -> byLine.putIfAbsent(row.row().line(), row));
    List<HeldRow> open = List.copyOf(byLine.values());
    List<String> rows = reader.rowsOf(bytes, String.valueOf(edited));
    if (open.isEmpty()) {
      throw new FileRefused("No row of file " + fileId + " is open; nothing was changed.");
    }
    if (rows.size() != open.size()) {
      throw new FileRefused(
          "%s has %d rows, but %d of file %d are open; leave each row in its place, also those that"
                  .formatted(edited, rows.size(), open.size(), fileId)
              + " cannot be mended. Nothing was changed.");
    }
    List<MendedText> texts = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      texts.add(new MendedText(open.get(i).id(), rows.get(i)));
    }
    return texts;
  }

  private static int tell(MendReport report) {
    report.file().ifPresent(entry -> System.out.println(ImportCommand.text(entry)));
    for (MendReport.Still row : report.still()) {
      System.out.println("line " + row.line() + " stays in quarantine: " + row.reason());
    }
    return report.still().isEmpty() ? ExitStatus.DONE : ExitStatus.REFUSED;
  }
}
