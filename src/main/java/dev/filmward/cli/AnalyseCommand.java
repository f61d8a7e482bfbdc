package dev.filmward.cli;

import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.FileCount;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.Analysis;
import dev.filmward.pipeline.AnalysisScope;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import dev.filmward.pipeline.BaselineChoice;
import dev.filmward.pipeline.BatchAnalysis;
import dev.filmward.pipeline.BatchAnalysis.InputFile;
import dev.filmward.pipeline.OtherChart;
import dev.filmward.pipeline.Plant;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import dev.filmward.subgroup.Subgrouping;
import dev.filmward.tables.AnalysisTable;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Charts, tests and capability of files, without a database. */
@Command(
    name = "analyse",
    description =
        "Charts, tests and capability of files of readings without a database, or of what is stored.",
    mixinStandardHelpOptions = true)
final class AnalyseCommand implements Callable<Integer> {
  private static final int REJECTIONS_SHOWN = 20;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(
      arity = "0..*",
      paramLabel = "FILE",
      description = "Files of readings (CSV); all that is stored in the data folder unless given.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--structures",
      paramLabel = "FILE",
      description = "The structures (YAML); structures.yaml beside the first file unless given.")
  private @Nullable Path structures;

  @Option(names = "--format", description = "${COMPLETION-CANDIDATES}; text unless given.")
  private Format format = Format.TEXT;

  @Option(names = "--shares", description = "Also each layer's share of the total.")
  private boolean shares;

  @Option(
      names = "--baseline",
      paramLabel = "first:N|last:N|FROM..TO",
      converter = BaselineOption.class,
      description = "Subgroups that the limits come from; all unless given.")
  private @Nullable BaselineChoice baseline;

  @Option(
      names = "--week",
      paramLabel = "YEAR-Wnn",
      converter = WeekOption.class,
      description = "Only samples of an ISO week in the plant's zone, for example 2026-W47.")
  private WeekOption.@Nullable Week week;

  @Option(
      names = "--charts",
      split = ",",
      paramLabel = "CHART",
      converter = ChartOption.class,
      description =
          "Charts besides means and ranges, separated by commas: mean-deviation, individuals,"
              + " ewma, cusum, residual (where neighbouring samples are alike), three-way (where"
              + " lanes differ steadily; keeps all readings in memory), t-squared (all layers"
              + " together).")
  private Set<OtherChart> charts = new TreeSet<>();

  @Option(
      names = "--tests",
      split = ",",
      paramLabel = "TEST",
      converter = TestOption.class,
      description =
          "Tests of the means, separated by commas; the four zone tests unless given. Among"
              + " beyond-limit, two-of-three, four-of-five, eight-in-a-row, trend,"
              + " stratification, mixture, alternation.")
  private Set<SignalTest> tests = new TreeSet<>();

  @Option(
      names = "--detail",
      description =
          "Also how sure the capability is, since when the mean drifts and where to, whether"
              + " neighbouring samples are alike, how layers move together, and what resin could"
              + " be saved; keeps all readings in memory.")
  private boolean detail;

  @Option(
      names = "--screen",
      description =
          "Leaves out samples that look misread, as a plant holds them out, and says how many;"
              + " keeps all readings in memory. Readings are analysed as exported unless given.")
  private boolean screen;

  @Option(names = "--strict", description = "Exit with status 3 where any row is quarantined.")
  private boolean strict;

  @Mixin private ZoneOption zone = new ZoneOption();
  @Mixin private OutputOptions output = new OutputOptions();
  @Mixin private MappingOption mapping = new MappingOption();
  @Mixin private DataOption data = new DataOption();

  private long rejections;

  /** The same as of its arguments, without the command line. */
  static AnalyseCommand of(List<Path> files, Path structures, Format format, ZoneOption zone) {
    AnalyseCommand command = new AnalyseCommand();
    command.files = files;
    command.structures = structures;
    command.format = format;
    command.zone = zone;
    return command;
  }

  /** How results are written. */
  enum Format {
    TEXT,
    JSON,
    CSV
  }

  @Override
  public Integer call() throws IOException, FileRefused, MappingFault, StructuresFault {
    if (!output.fault().isEmpty()) {
      throw new ParameterException(command().commandLine(), output.fault());
    }
    Analysis analysis = files.isEmpty() ? ofStored() : ofFiles();
    print(analysis);
    long quarantined = analysis.files().stream().mapToLong(FileCount::quarantined).sum();
    return strict && quarantined > 0 ? ExitStatus.REFUSED : ExitStatus.DONE;
  }

  private Analysis ofFiles() throws IOException, FileRefused, MappingFault, StructuresFault {
    List<InputFile> inputs = new ArrayList<>();
    for (Path file : files) {
      inputs.add(InputFile.at(file));
    }
    Structures known = StructuresSource.read(structuresFile());
    BatchAnalysis batch = new BatchAnalysis(known, zone.zone, scope(), mapping.read());
    if (!screen) {
      return batch.analyse(inputs, this::tell);
    }
    Analysis analysis = batch.analyseScreened(inputs, this::tell);
    tellHeldOut(batch);
    return analysis;
  }

  private Analysis ofStored() {
    if (!data.database.isGiven() && !Files.isDirectory(data.folder)) {
      throw new ParameterException(
          command().commandLine(),
          "Which files? Name some, or a data folder that is there with --data; there is no "
              + data.folder
              + ".");
    }
    try (Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone)) {
      BatchAnalysis batch = new BatchAnalysis(plant.structures(), zone.zone, scope());
      if (!screen) {
        return batch.analyse(plant);
      }
      Analysis analysis = batch.analyseScreened(plant);
      tellHeldOut(batch);
      return analysis;
    }
  }

  private AnalysisScope scope() {
    Function<Structure, Subgrouping> charted =
        shares ? Subgrouping::withShares : Subgrouping::layersAndTotal;
    return new AnalysisScope(
        charted,
        week == null ? takenAt -> true : week.in(zone.zone),
        Optional.ofNullable(baseline),
        charts,
        tests.isEmpty() ? TestSet.STANDARD : TestSet.onMeans(tests.toArray(SignalTest[]::new)),
        detail ? Closeness.DETAIL : Closeness.FIGURES);
  }

  private Path structuresFile() {
    return StructuresSource.file(structures, files.get(0).toAbsolutePath())
        .orElseThrow(
            () ->
                new ParameterException(
                    command().commandLine(),
                    "Which structures? There is no structures.yaml beside "
                        + files.get(0)
                        + "; name the file with --structures FILE."));
  }

  private void print(Analysis analysis) throws IOException {
    PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
    switch (format) {
      case JSON -> new AnalysisJson(zone.zone, output).write(analysis, out);
      case CSV -> out.print(new AnalysisTable(analysis).csv());
      case TEXT -> out.print(new AnalysisText(zone.zone, output).of(analysis));
    }
    out.flush();
    if (format != Format.TEXT) {
      analysis.files().forEach(file -> err().println(AnalysisText.summary(file)));
      AnalysisText text = new AnalysisText(zone.zone, output);
      analysis.thinned().forEach(thinned -> err().println(text.words(thinned)));
    }
    if (rejections > REJECTIONS_SHOWN) {
      err().println("... and " + (rejections - REJECTIONS_SHOWN) + " more");
    }
    err().flush();
  }

  private void tell(Rejection rejection) {
    rejections++;
    if (rejections <= REJECTIONS_SHOWN) {
      err().println(RejectionWords.of(rejection));
    }
  }

  private void tellHeldOut(BatchAnalysis batch) {
    int all = batch.heldOut().values().stream().mapToInt(Integer::intValue).sum();
    err().println((all == 1 ? "1 sample" : all + " samples") + " left out as misread");
    batch.heldOut().forEach((kind, count) -> err().println("  " + count + ": " + kind.words()));
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("run through the command line");
    }
    return spec;
  }

  /** As the command line library writes to it. */
  static PrintWriter standardError() {
    return new PrintWriter(System.err, true, Charset.defaultCharset());
  }

  private PrintWriter err() {
    return spec == null ? standardError() : spec.commandLine().getErr();
  }
}
