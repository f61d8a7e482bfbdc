package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.intake.FileCount;
import dev.filmward.intake.FileHead;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Mappings;
import dev.filmward.intake.PlainHead;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.Rejection;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.Analysis.Thinned;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import dev.filmward.store.SampleTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.SampleAssembler;
import dev.filmward.subgroup.SampleDraft;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Analyses files of readings without a database, or all that a plant has stored: charts, tests and
 * capability of every series, under limits computed from all its subgroups.
 *
 * <p>Memory grows by the samples' figures, not by the readings. Where the parts of a sample turn
 * out to lie far apart, the files are read a second time and sorted through temporary files. For
 * one thread.
 */
public final class BatchAnalysis {
  /** Fewer samples are judged sooner by one thread than more threads are started. */
  private static final int WORTH_THREADS = 5000;

  private final Structures structures;
  private final ZoneId zone;
  private final AnalysisScope scope;
  private final Mappings mappings;
  private final Map<Made, SampleColumns> columns = new TreeMap<>(Made.ORDER);
  private final Map<Made, FilmLook> films = new TreeMap<>(Made.ORDER);
  private final Map<Made, Thinned> thinned = new TreeMap<>(Made.ORDER);
  private final Map<Misread, Integer> heldOut = new TreeMap<>();
  private final SeenSamples seen = new SeenSamples();
  private final PartedFile.Cut cut;
  private @Nullable SampleColumns lastColumns;
  private boolean partsLieApart;

  public BatchAnalysis(Structures structures, ZoneId zone, AnalysisScope scope) {
    this(structures, zone, scope, Mappings.NONE);
  }

  /**
   * @param mappings through which files with headings of their own are read
   */
  public BatchAnalysis(Structures structures, ZoneId zone, AnalysisScope scope, Mappings mappings) {
    this(structures, zone, scope, mappings, PartedFile.Cut.usual());
  }

  BatchAnalysis(
      Structures structures,
      ZoneId zone,
      AnalysisScope scope,
      Mappings mappings,
      PartedFile.Cut cut) {
    this.mappings = mappings;
    this.cut = cut;
    this.structures = structures;
    this.zone = zone;
    this.scope = scope;
  }

  /** A file that can be opened more than once. */
  public record InputFile(String name, IncomingFile.Opener opener, Optional<Path> path) {
    public InputFile(String name, IncomingFile.Opener opener) {
      this(name, opener, Optional.empty());
    }

    /** A file on this machine, which may be read in parts where it is long. */
    public static InputFile at(Path path) {
      return new InputFile(path.toString(), () -> Files.newInputStream(path), Optional.of(path));
    }
  }

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
    List<FileCount> counts = readOnce(files, rejections);
    if (partsLieApart) {
      columns.clear();
      films.clear();
      lastColumns = null;
      try (SampleSpill spill = new SampleSpill(structures)) {
        readAgain(files, spill);
        spill.forEach(this::add);
      }
    }
    return analysis(counts);
  }

  /**
   * Reads all files and sums up what a plant would chart of them, without the samples that look
   * misread; keeps all readings in memory.
   *
   * @throws FileRefused if a file has no usable header
   */
  public Analysis analyseScreened(List<InputFile> files, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    ReadingsParser parser = new ReadingsParser(structures, zone, mappings);
    List<FileCount> counts = new ArrayList<>();
    BatchScreening screening = new BatchScreening(structures);
    try (SampleSpill spill = new SampleSpill(structures)) {
      for (InputFile file : files) {
        try (InputStream in = file.opener().open()) {
          counts.add(readInOneGo(parser.head(in, file.name()), spill::add, rejections));
        }
      }
      spill.forEach(screening::add);
    }
    screening.forEachCharted(this::add);
    heldOut.putAll(screening.heldOut());
    return analysis(counts);
  }

  /** Sums up what a plant has stored; the same series as of the files that it came in. */
  public Analysis analyse(Plant plant) {
    return analyse(plant, Charted::withMisread);
  }

  /** Sums up what a plant charts, without the samples that are held out as misread. */
  public Analysis analyseScreened(Plant plant) {
    return analyse(plant, Charted::asKept);
  }

  /** How many samples were left out as misread, by the reason. */
  public Map<Misread, Integer> heldOut() {
    return Collections.unmodifiableMap(heldOut);
  }

  private Analysis analyse(Plant plant, Function<Tables, Charted> chartedBy) {
    plant
        .store()
        .read(
            tables -> {
              Charted charted = chartedBy.apply(tables);
              tables.samples().forEach(stored -> addStored(tables, stored, charted));
              return columns.size();
            });
    return analysis(List.of());
  }

  private void addStored(Tables tables, SampleTable.Stored stored, Charted charted) {
    Sample sample = stored.sample();
    if (!stored.isThinned()) {
      charted.of(sample).ifPresentOrElse(this::addKnown, () -> noteHeldOut(tables, stored));
    } else if (scope.period().test(sample.takenAt())) {
      thinned.merge(
          new Made(sample.key().line(), sample.key().structure()),
          Thinned.of(sample),
          Thinned::and);
    }
  }

  private void noteHeldOut(Tables tables, SampleTable.Stored stored) {
    tables.screening().flags(List.of(stored.id())).getOrDefault(stored.id(), List.of()).stream()
        .filter(Flag::isReasonToHoldOut)
        .findFirst()
        .ifPresent(flag -> heldOut.merge(flag.kind(), 1, Integer::sum));
  }

  private void addKnown(Sample sample) {
    structures.find(sample.key().structure()).ifPresent(structure -> add(sample, structure));
  }

  private Analysis analysis(List<FileCount> counts) {
    return new Analysis(
        counts,
        List.copyOf(thinned.values()),
        series(),
        scope.closeness() == Closeness.FIGURES ? List.of() : prices(),
        scope.closeness() == Closeness.FIGURES ? List.of() : correlations());
  }

  private List<Series> series() {
    List<Supplier<Series>> analyses = columns.entrySet().stream().flatMap(this::analyses).toList();
    int samples = columns.values().stream().mapToInt(SampleColumns::count).sum();
    return samples < WORTH_THREADS || !films.isEmpty()
        ? analyses.stream().map(Supplier::get).toList()
        : analyses.parallelStream().map(Supplier::get).toList();
  }

  private Stream<Supplier<Series>> analyses(Map.Entry<Made, SampleColumns> made) {
    Stream<Supplier<Series>> series = made.getValue().analyses();
    FilmLook film = films.get(made.getKey());
    return film == null ? series : series.map(analysis -> () -> film.complete(analysis.get()));
  }

  private List<FilmCorrelations> correlations() {
    return films.values().stream().map(FilmLook::correlations).flatMap(Optional::stream).toList();
  }

  private List<LinePrice> prices() {
    return columns.values().stream()
        .map(made -> made.price(scope.tests()))
        .flatMap(Optional::stream)
        .toList();
  }

  private List<FileCount> readOnce(List<InputFile> files, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    ReadingsParser parser = new ReadingsParser(structures, zone, mappings);
    List<FileCount> counts = new ArrayList<>();
    for (InputFile file : files) {
      try (InputStream in = file.opener().open()) {
        FileHead head = parser.head(in, file.name());
        counts.add(
            head instanceof PlainHead plain && isParted(file, plain)
                ? new PartedFile(file.path().orElseThrow(), plain, cut, rejections)
                    .read(scope, new FirstTime())
                : readInOneGo(head, this::addIfNew, rejections));
      }
    }
    return counts;
  }

  /** A closer look is at whole samples, one after the other. */
  private boolean isParted(InputFile file, PlainHead head) throws IOException {
    return scope.closeness() == Closeness.FIGURES
        && !FilmLook.isAskedFor(scope)
        && head.isDivisible()
        && file.path().isPresent()
        && Files.isRegularFile(file.path().get())
        && Files.size(file.path().get()) > cut.bytes();
  }

  private FileCount readInOneGo(
      FileHead head, Consumer<SampleDraft> receiver, Consumer<Rejection> rejections)
      throws IOException {
    SampleAssembler assembler = new SampleAssembler(receiver);
    FileCount count = head.readRest(assembler, rejections);
    assembler.finish();
    return count;
  }

  private void readAgain(List<InputFile> files, SampleSpill spill) throws IOException, FileRefused {
    ReadingsParser parser = new ReadingsParser(structures, zone, mappings);
    for (InputFile file : files) {
      try (InputStream in = file.opener().open()) {
        readInOneGo(parser.head(in, file.name()), spill::add, rejection -> {});
      }
    }
  }

  private void addIfNew(SampleDraft draft) {
    if (!partsLieApart && seen.add(draft.key())) {
      add(draft.toSample(), draft.structure());
    } else {
      partsLieApart = true;
    }
  }

  /** Takes samples as long as each comes once. */
  private final class FirstTime implements SampleJoin.Receiver {
    @Override
    public void add(SampleFigures samples, int sample) {
      SampleKey key = samples.key(sample);
      if (partsLieApart || !seen.add(key)) {
        partsLieApart = true;
      } else if (scope.period().test(samples.takenAt(sample))) {
        columns(key, samples.structure(sample)).add(samples, sample);
      }
    }

    @Override
    public void contradiction() {
      partsLieApart = true;
    }
  }

  private void add(Sample sample, Structure structure) {
    if (!scope.period().test(sample.takenAt())) {
      return;
    }
    columns(sample.key(), structure).add(sample);
    if (FilmLook.isAskedFor(scope)) {
      films
          .computeIfAbsent(
              new Made(sample.key().line(), structure.code()),
              made -> new FilmLook(made.line(), structure, scope))
          .add(sample);
    }
  }

  private SampleColumns columns(SampleKey key, Structure structure) {
    SampleColumns last = lastColumns;
    if (last == null || !last.isOf(key)) {
      last =
          columns.computeIfAbsent(
              new Made(key.line(), structure.code()),
              made -> new SampleColumns(made.line(), structure, scope));
      lastColumns = last;
    }
    return last;
  }
}
