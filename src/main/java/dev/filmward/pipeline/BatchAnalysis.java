package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.FileCount;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.Rejection;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import dev.filmward.subgroup.SampleAssembler;
import dev.filmward.subgroup.SampleDraft;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Analyses files of readings without a database, or all that a plant has stored: charts, tests and
 * capability of every series, under limits computed from all its subgroups.
 *
 * <p>Memory grows by the samples' figures, not by the readings. Where the parts of a sample turn
 * out to lie far apart, the files are read a second time and sorted through temporary files. For
 * one thread.
 */
public final class BatchAnalysis {
  private final Structures structures;
  private final ZoneId zone;
  private final AnalysisScope scope;
  private final Map<Made, SampleColumns> columns = new TreeMap<>(Made.ORDER);
  private final Set<SampleKey> seen = new HashSet<>();
  private boolean partsLieApart;

  public BatchAnalysis(Structures structures, ZoneId zone, AnalysisScope scope) {
    this.structures = structures;
    this.zone = zone;
    this.scope = scope;
  }

  /** A file that can be opened more than once. */
  public record InputFile(String name, IncomingFile.Opener opener) {}

  private record Made(String line, String structure) {
    private static final Comparator<Made> ORDER =
        Comparator.comparing(Made::line).thenComparing(Made::structure);
  }

  /**
   * Reads all files and sums them up.
   *
   * @throws FileRefused if a file has no usable header
   */
  public Analysis analyse(List<InputFile> files, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    List<FileCount> counts = read(files, this::addIfNew, rejections);
    if (partsLieApart) {
      columns.clear();
      try (SampleSpill spill = new SampleSpill(structures)) {
        read(files, spill::add, rejection -> {});
        spill.forEach(this::add);
      }
    }
    return analysis(counts);
  }

  /** Sums up what a plant has stored; the same series as of the files that it came in. */
  public Analysis analyse(Plant plant) {
    plant
        .store()
        .read(
            tables -> {
              tables.samples().forEach(this::addKnown);
              return columns.size();
            });
    return analysis(List.of());
  }

  private void addKnown(Sample sample) {
    structures.find(sample.key().structure()).ifPresent(structure -> add(sample, structure));
  }

  private Analysis analysis(List<FileCount> counts) {
    return new Analysis(
        counts,
        columns.values().stream().flatMap(made -> made.analyse().stream()).toList(),
        scope.closeness() == Closeness.FIGURES ? List.of() : prices());
  }

  private List<LinePrice> prices() {
    return columns.values().stream()
        .map(made -> made.price(scope.tests()))
        .flatMap(Optional::stream)
        .toList();
  }

  private List<FileCount> read(
      List<InputFile> files, Consumer<SampleDraft> receiver, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    ReadingsParser parser = new ReadingsParser(structures, zone);
    List<FileCount> counts = new ArrayList<>();
    for (InputFile file : files) {
      SampleAssembler assembler = new SampleAssembler(receiver);
      try (InputStream in = file.opener().open()) {
        counts.add(parser.parse(in, file.name(), assembler, rejections));
      }
      assembler.finish();
    }
    return counts;
  }

  private void addIfNew(SampleDraft draft) {
    if (!partsLieApart && seen.add(draft.key())) {
      add(draft.toSample(), draft.structure());
    } else {
      partsLieApart = true;
      seen.clear();
    }
  }

  private void add(Sample sample, Structure structure) {
    if (!scope.period().test(sample.takenAt())) {
      return;
    }
    columns
        .computeIfAbsent(
            new Made(sample.key().line(), structure.code()),
            made -> new SampleColumns(made.line(), structure, scope))
        .add(sample);
  }
}
