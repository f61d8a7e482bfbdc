package dev.filmward.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.ReferenceReadings;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.Words;
import dev.filmward.pipeline.StudyFiles;
import dev.filmward.pipeline.StudyFiles.Content;
import dev.filmward.web.GaugeStudyJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Repeatability and reproducibility of a gauge, for each layer. */
@Command(
    name = "gauge-study",
    description =
        "Repeatability and reproducibility per layer, from a file of a balanced crossed study"
            + " (part,operator,trial,layer,thickness_um).",
    mixinStandardHelpOptions = true)
final class GaugeStudyCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The readings of the study (CSV).")
  private Path file = Path.of("");

  @Option(names = "--format", description = "${COMPLETION-CANDIDATES}; text unless given.")
  private Format format = Format.TEXT;

  @Option(
      names = "--structures",
      paramLabel = "FILE",
      description =
          "The structures (YAML) to take tolerances from; with --structure, structures.yaml beside"
              + " the file unless given.")
  private @Nullable Path structures;

  @Option(
      names = "--structure",
      paramLabel = "CODE",
      description = "Which of the structures was measured; the only one unless given.")
  private @Nullable String code;

  /** How results are written. */
  enum Format {
    TEXT,
    JSON
  }

  @Override
  public Integer call() throws IOException, FileRefused, StructuresFault {
    Optional<Structure> structure = structure();
    Content content = content();
    if (!isUsable(content)) {
      return ExitStatus.REFUSED;
    }
    List<LayerOutcome> outcomes =
        LayerOutcome.of(content.readings(), layer -> limits(structure, layer));
    boolean isComplete = true;
    boolean hasResult = !content.references().layers().isEmpty();
    for (LayerOutcome outcome : outcomes) {
      if (outcome instanceof LayerOutcome.Refused refused) {
        tell(refused);
        isComplete &= !content.references().pieces(refused.layer()).isEmpty();
      } else {
        hasResult = true;
      }
    }
    if (hasResult) {
      print(outcomes, content.references());
    }
    return isComplete ? ExitStatus.DONE : ExitStatus.REFUSED;
  }

  private Content content() throws IOException, FileRefused {
    try (InputStream in = Files.newInputStream(file)) {
      return StudyFiles.read(in, file.toString());
    }
  }

  private boolean isUsable(Content content) {
    for (Rejection rejection : content.rejections()) {
      err().println(RejectionWords.of(rejection));
    }
    long more = content.rejected() - content.rejections().size();
    if (more > 0) {
      err().println("... and " + more + " more");
    }
    if (content.rejected() > 0) {
      err()
          .println(
              "A study needs every reading: correct "
                  + (content.rejected() == 1 ? "this row" : "these rows")
                  + " and try again.");
    } else if (content.readings().count() == 0) {
      err().println(file + " has no readings below its header; there is nothing to study.");
    }
    return content.rejected() == 0 && content.readings().count() > 0;
  }

  private void print(List<LayerOutcome> outcomes, ReferenceReadings references) throws IOException {
    PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
    if (format == Format.JSON) {
      ObjectNode node = GaugeStudyJson.studies(outcomes);
      if (!references.layers().isEmpty()) {
        node.set("references", GaugeStudyJson.references(references));
      }
      ObjectMapper mapper = JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
      out.println(mapper.writeValueAsString(node));
    } else {
      out.print(ReferenceText.of(references));
      out.print(GaugeStudyText.of(outcomes));
    }
    out.flush();
  }

  private void tell(LayerOutcome.Refused refused) {
    for (String reason : refused.reasons()) {
      err().println(GaugeStudyText.printable(file + ", layer " + refused.layer() + ": " + reason));
    }
  }

  private SpecLimits limits(Optional<Structure> structure, String layer) {
    if (structure.isEmpty()) {
      return SpecLimits.NONE;
    }
    Optional<SpecLimits> known = StudyFiles.limits(structure.get(), layer);
    if (known.isEmpty()) {
      List<String> names = structure.get().reported().stream().map(one -> one.name()).toList();
      err()
          .println(
              GaugeStudyText.printable(
                  structure.get().code()
                      + " has no layer "
                      + Words.quoted(layer)
                      + ", so it has no tolerance; there are "
                      + Words.some(names)
                      + " and total"));
    }
    return known.orElse(SpecLimits.NONE);
  }

  private Optional<Structure> structure() throws IOException, StructuresFault {
    if (structures == null && code == null) {
      return Optional.empty();
    }
    Path source =
        StructuresSource.file(structures, file.toAbsolutePath())
            .orElseThrow(
                () ->
                    wrongUse(
                        "Which structures? There is no structures.yaml beside "
                            + file
                            + "; name the file with --structures FILE."));
    Structures known = StructuresSource.read(source);
    List<String> codes = known.all().stream().map(Structure::code).toList();
    if (code == null && codes.size() == 1) {
      return known.find(codes.get(0));
    }
    if (code == null) {
      throw wrongUse(
          "Which structure of " + Words.some(codes) + "? Name it with --structure CODE.");
    }
    return Optional.of(
        known
            .find(code)
            .orElseThrow(
                () ->
                    wrongUse(
                        "There is no structure "
                            + Words.quoted(String.valueOf(code))
                            + " in "
                            + source
                            + "; there are "
                            + Words.some(codes)
                            + ".")));
  }

  private ParameterException wrongUse(String words) {
    return new ParameterException(command().commandLine(), words);
  }

  private PrintWriter err() {
    return command().commandLine().getErr();
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("run through the command line");
    }
    return spec;
  }
}
