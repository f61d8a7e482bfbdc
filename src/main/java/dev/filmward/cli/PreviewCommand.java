package dev.filmward.cli;

import dev.filmward.film.Structures;
import dev.filmward.intake.FilePreview;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.HeadText;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.Mappings;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Recognition;
import dev.filmward.tables.PreviewTable;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    description =
        "What would be read of a file; of one with headings of its own, a proposed mapping.",
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

  @Option(
      names = "--answer",
      paramLabel = "KEY=TEXT",
      description =
          "An answer to a question about the file, by its key; may be given several times.")
  private Map<String, String> answers = new LinkedHashMap<>();

  @Mixin private MappingOption mapping = new MappingOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException, FileRefused, MappingFault, StructuresFault {
    Optional<Path> source = StructuresSource.file(structures, file.toAbsolutePath());
    Structures known =
        source.isPresent() ? StructuresSource.read(source.get()) : new Structures(List.of());
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = HeadText.take(in);
    }
    Optional<FilePreview> preview = look(known, mapping.read());
    if (preview.isEmpty()) {
      return propose(head, known);
    }
    out(text(preview.get(), source));
    return ExitStatus.DONE;
  }

  /** Empty where only a mapping could read the file. */
  private Optional<FilePreview> look(Structures known, Mappings mappings)
      throws IOException, FileRefused {
    try (InputStream in = Files.newInputStream(file)) {
      ReadingsParser parser = new ReadingsParser(known, zone.zone, mappings);
      return Optional.of(FilePreview.of(parser, in, file.toString(), rows));
    } catch (FileRefused e) {
      if (!mappings.all().isEmpty()) {
        throw e;
      }
      return Optional.empty();
    }
  }

  /** The mapping goes to standard output, so that it can be kept; all else is for the person. */
  private int propose(byte[] head, Structures known) throws IOException, FileRefused {
    String name = String.valueOf(file.getFileName());
    Proposal proposal =
        Recognition.of(head, name, new Recognition.Known(known, zone.zone), answers);
    out(proposal.yaml());
    System.err.println(ProposalWords.of(file.toString(), proposal));
    if (proposal.mapping().isPresent()) {
      Optional<FilePreview> preview = look(known, new Mappings(List.of(proposal.mapping().get())));
      preview.ifPresent(
          read ->
              System.err.println(
                  new PreviewTable(read).text() + AnalysisText.summary(read.count())));
    }
    return proposal.mapping().isPresent() ? ExitStatus.DONE : ExitStatus.REFUSED;
  }

  private static void out(String text) {
    PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
    out.print(text);
    out.flush();
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
