package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.store.AuditTable;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable;
import dev.filmward.store.StoreLook;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Proves that what is stored is whole: the database's own pages and references, the counts of every
 * file, the subgroup figures of every sample (computed anew from its readings, they must be the
 * same to the last bit; of a thinned sample they must be there), and the chain of what people did.
 * Changes nothing. For one thread; memory does not grow with what is stored.
 */
public final class StoredCheck {
  private static final int SAMPLES_AT_ONCE = 2_000;
  private static final int MOST_FAULTS = 20;

  private final Tables tables;
  private final Structures structures;
  private final Charted charted;
  private final Optional<String> keptHead;
  private final List<String> faults = new ArrayList<>();
  private final List<Sample> waiting = new ArrayList<>();
  private final Map<List<String>, Long> samplesOf = new HashMap<>();
  private long samples;
  private long readings;
  private long thinned;
  private long moreFaults;

  private StoredCheck(Tables tables, Optional<String> keptHead) {
    this.tables = tables;
    this.keptHead = keptHead;
    this.charted = Charted.asKept(tables);
    this.structures = StructureBook.read(tables.structures().all());
  }

  /**
   * What was looked at, and what is wrong.
   *
   * @param samples all of them, of which {@code thinned} have no readings any more
   * @param auditHead hash of the newest entry of the audit chain; printed or sent elsewhere it
   *     proves later that nothing before it was changed or cut off
   * @param faults sentences; empty where all is well
   */
  public record Report(
      long samples,
      long readings,
      long thinned,
      long auditEntries,
      String auditHead,
      List<String> faults) {
    public Report {
      faults = List.copyOf(faults);
    }
  }

  public static Report of(StoreLook look) {
    return of(look, Optional.empty());
  }

  /** The same, and whether a hash of the audit chain that was kept elsewhere is still in it. */
  public static Report of(StoreLook look, Optional<String> keptHead) {
    return look.read(tables -> new StoredCheck(tables, keptHead).report());
  }

  private Report report() {
    tables.soundness().ofTheFile().forEach(this::fault);
    tables.soundness().ofTheCounts().forEach(this::fault);
    tables.soundness().ofTheThinning().forEach(this::fault);
    tables.samples().forEach(this::take);
    compare();
    tables.samples().productions().forEach(this::compareCounts);
    AuditTable.Check audit = tables.audit().check(keptHead);
    audit.fault().ifPresent(what -> fault("the audit chain: " + what));
    if (moreFaults > 0) {
      faults.add("and " + moreFaults + " more");
    }
    return new Report(samples, readings, thinned, audit.links(), audit.head(), faults);
  }

  private void take(SampleTable.Stored stored) {
    Sample sample = stored.sample();
    samples++;
    thinned += stored.isThinned() ? 1 : 0;
    samplesOf.merge(List.of(sample.key().line(), sample.key().structure()), 1L, Long::sum);
    readings += sample.readings();
    waiting.add(sample);
    if (waiting.size() >= SAMPLES_AT_ONCE) {
      compare();
    }
  }

  private void compare() {
    waiting.stream()
        .collect(
            Collectors.groupingBy(sample -> List.of(sample.key().line(), sample.key().structure())))
        .values()
        .forEach(this::compareProduction);
    waiting.clear();
  }

  private void compareProduction(List<Sample> made) {
    SampleKey any = made.get(0).key();
    Optional<Structure> structure = structures.find(any.structure());
    if (structure.isEmpty()) {
      fault("nothing is known of structure " + any.structure() + ", of which there are samples");
      return;
    }
    for (Characteristic what : Subgrouping.layersAndTotal(structure.get()).characteristics()) {
      Map<SampleKey, Point> kept = kept(made, what.position());
      for (Sample sample : made) {
        if (!isRight(kept.get(sample.key()), sample, structure.get(), what)) {
          fault(
              "the figures of "
                  + what.name()
                  + " in "
                  + words(sample.key())
                  + " are not those of its readings");
        }
      }
    }
  }

  private boolean isRight(
      @Nullable Point kept, Sample sample, Structure structure, Characteristic what) {
    if (sample.layers() == 0) {
      return kept != null && kept.takenAt.equals(sample.takenAt());
    }
    Optional<Subgroup> subgroup = charted.figures(sample, structure).get(what.position());
    return new Point(sample.takenAt(), subgroup).equals(kept);
  }

  private record Point(Instant takenAt, Optional<Subgroup> subgroup) {}

  private Map<SampleKey, Point> kept(List<Sample> made, int position) {
    SampleKey any = made.get(0).key();
    Instant from = made.stream().map(Sample::takenAt).min(Instant::compareTo).orElseThrow();
    Instant to = made.stream().map(Sample::takenAt).max(Instant::compareTo).orElseThrow();
    Map<SampleKey, Point> kept = new HashMap<>();
    for (FigureRow row :
        tables
            .figures()
            .within(new Series(any.line(), any.structure(), position), new Span(from, to))) {
      if (kept.put(row.key(), new Point(row.takenAt(), row.subgroup())) != null) {
        fault(words(row.key()) + " has its figures twice");
      }
    }
    return kept;
  }

  private void compareCounts(SampleTable.Production made) {
    Series total = new Series(made.line(), made.structure(), 0);
    int charted = tables.figures().columns(total, Span.always()).count();
    long stored = samplesOf.getOrDefault(List.of(made.line(), made.structure()), 0L);
    if (charted != made.samples() || stored != made.samples()) {
      fault(
          ("of %s on %s there are %d samples by the count, %d that are stored and %d that are"
                  + " charted")
              .formatted(made.structure(), made.line(), made.samples(), stored, charted));
    }
  }

  private static String words(SampleKey key) {
    return "sample " + key.sample() + " of roll " + key.roll() + " on " + key.line();
  }

  private void fault(String sentence) {
    if (faults.size() < MOST_FAULTS) {
      faults.add(sentence);
    } else {
      moreFaults++;
    }
  }
}
