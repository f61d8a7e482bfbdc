package dev.filmward.cli;

import dev.filmward.film.Structures;
import dev.filmward.intake.FilePreview;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StructuresFault;
import dev.filmward.tables.PreviewTable;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What would be read of a file. */
@Command(
    name = "preview",
    description = "What would be read of a file: how it is written, its first rows, what is wrong.",
    mixinStandardHelpOptions = true)
final class PreviewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A file of readings (CSV).")
  private Path file = Path.of("");

  @Option(
      names = "--structures",
      paramLabel = "FILE",
      description = "The structures (YAML); structures.yaml beside the file unless given.")
  private @Nullable Path structures;

  @Option(names = "--rows", paramLabel = "N", description = "How many rows; 12 unless given.")
  private int rows = 12;

  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException, FileRefused, StructuresFault {
    Optional<Path> source = StructuresSource.file(structures, file.toAbsolutePath());
    Structures known =
        source.isPresent() ? StructuresSource.read(source.get()) : new Structures(List.of());
    try (InputStream in = Files.newInputStream(file)) {
      FilePreview preview = FilePreview.of(in, file.toString(), known, zone.zone, rows);
      PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
      out.print(text(preview, source));
      out.flush();
    }
    return ExitStatus.DONE;
  }

  private static String text(FilePreview preview, Optional<Path> structures) {
    StringBuilder text = new StringBuilder();
    text.append(preview.dialect().describe()).append("\n\n");
    text.append(new PreviewTable(preview).text()).append('\n');
    text.append("Of the rows looked at:\n").append(AnalysisText.summary(preview.count()));
    text.append('\n');
    for (Rejection rejection : preview.rejections()) {
      text.append(RejectionWords.of(rejection)).append('\n');
    }
    text.append(
        structures
            .map(path -> "Structures from " + path + ".\n")
            .orElse("No structures were given, so every layer is unknown: --structures FILE.\n"));
    return text.toString();
  }
}
