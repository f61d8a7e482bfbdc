package dev.filmward.store;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.subgroup.Subgroup;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.result.ResultIterator;
import org.jdbi.v3.core.statement.Query;

/** Samples with all their readings. */
public final class SampleTable {
  private static final String SELECT =
      "SELECT s.*, p.line, p.structure FROM sample s JOIN production p ON p.id = s.production_id";

  private static final String OF_ROLL =
      "s.production_id = " + BlockTable.PRODUCTION + " AND s.roll = :roll";

  /** Names that one question asks for. */
  private static final int NAMES_AT_ONCE = 256;

  private static final Comparator<String> AS_THE_DATABASE_SORTS =
      (a, b) ->
          Arrays.compareUnsigned(
              a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));

  private final Handle handle;
  private final Database database;

  SampleTable(Handle handle, Database database) {
    this.handle = handle;
    this.database = database;
  }

  /** A sample as it is kept, and the file by which it came first. */
  public record Stored(long id, long fileId, Sample sample) {
    /** Whether its readings were taken away; the sample then has no layers, only its lanes. */
    public boolean isThinned() {
      return sample.layers() == 0;
    }

    /** The same, with its readings as they are shown. */
    public Stored as(Sample shown) {
      return new Stored(id, fileId, shown);
    }
  }

  /** By which file a sample came, and when. */
  public record Origin(long fileId, Instant receivedAt) {}

  /**
   * A reading that takes the place of another one.
   *
   * @param position {@value #OF_TEMPERATURE} for a lane's temperature, whose values are degrees
   *     Celsius
   */
  public record Correction(int position, int lane, double oldUm, double newUm) {
    public static final int OF_TEMPERATURE = 0;

    /** A temperature of the film that takes the place of another one, degrees Celsius. */
    public static Correction ofTemperature(int lane, double before, double now) {
      return new Correction(OF_TEMPERATURE, lane, before, now);
    }
  }

  /**
   * What becomes of one sample.
   *
   * @param before empty where the sample is new
   * @param figures subgroups by position, the total first; empty where nothing was measured
   */
  public record Change(
      Optional<Stored> before,
      Sample now,
      List<Optional<Subgroup>> figures,
      List<Correction> corrections) {}

  /**
   * A piece of the samples of a production.
   *
   * @param after the sample that it begins after; empty at the beginning
   * @param most samples in it
   */
  public record Piece(String line, String structure, Optional<Sample> after, int most) {}

  /** What a line has made. */
  public record Production(String line, String structure, long samples, Instant lastAt) {}

  public Optional<Stored> find(SampleKey key) {
    return Optional.ofNullable(known(List.of(key)).get(key));
  }

  /** Those of some samples that are kept. */
  public Map<SampleKey, Stored> known(Collection<SampleKey> keys) {
    Map<SampleKey, Stored> known = new HashMap<>();
    keys.stream()
        .collect(Collectors.groupingBy(Roll::of, LinkedHashMap::new, Collectors.toList()))
        .forEach((roll, samples) -> addKnown(roll, samples, known));
    return known;
  }

  private record Roll(String line, String structure, String roll) {
    private static Roll of(SampleKey key) {
      return new Roll(key.line(), key.structure(), key.roll());
    }
  }

  private void addKnown(Roll roll, List<SampleKey> keys, Map<SampleKey, Stored> known) {
    List<String> names =
        keys.stream().map(SampleKey::sample).sorted(AS_THE_DATABASE_SORTS).distinct().toList();
    if (names.size() > 1 && !hasAny(roll, names.get(0), names.get(names.size() - 1))) {
      return;
    }
    for (int from = 0; from < names.size(); from += NAMES_AT_ONCE) {
      ofRoll(SELECT + " WHERE " + OF_ROLL + " AND s.sample IN (<names>)", roll)
          .bindList("names", names.subList(from, Math.min(names.size(), from + NAMES_AT_ONCE)))
          .map((row, context) -> stored(row))
          .forEach(stored -> known.put(stored.sample().key(), stored));
    }
  }

  private boolean hasAny(Roll roll, String first, String last) {
    return ofRoll(
                "SELECT count(*) FROM (SELECT 1 FROM sample s WHERE "
                    + OF_ROLL
                    + " AND s.sample BETWEEN :first AND :last LIMIT 1) found",
                roll)
            .bind("first", first)
            .bind("last", last)
            .mapTo(Long.class)
            .one()
        > 0;
  }

  private Query ofRoll(String sql, Roll roll) {
    return handle
        .createQuery(sql)
        .bind("line", roll.line)
        .bind("structure", roll.structure)
        .bind("roll", roll.roll);
  }

  /** The newest samples of a production that have their readings, oldest first. */
  public List<Stored> newest(String line, String structure, int most) {
    return handle
        .createQuery(
            "SELECT * FROM ("
                + SELECT
                + " WHERE s.production_id = "
                + BlockTable.PRODUCTION
                + " AND s.um <> '[]' ORDER BY s.taken_at DESC, s.roll DESC, s.sample DESC LIMIT :most) newest"
                + " ORDER BY taken_at, roll, sample")
        .bind("line", line)
        .bind("structure", structure)
        .bind("most", most)
        .map((row, context) -> stored(row))
        .list();
  }

  /** Gives the samples of a production in a span to a receiver, one at a time, in time order. */
  public void within(String line, String structure, Span span, Consumer<Stored> receiver) {
    try (ResultIterator<Stored> samples =
        handle
            .createQuery(
                SELECT
                    + " WHERE s.production_id = "
                    + BlockTable.PRODUCTION
                    + " AND s.taken_at BETWEEN :from AND :to"
                    + " ORDER BY s.taken_at, s.roll, s.sample")
            .bind("line", line)
            .bind("structure", structure)
            .bind("from", Times.toMicros(span.from()))
            .bind("to", Times.toMicros(span.to()))
            .map((row, context) -> stored(row))
            .iterator()) {
      samples.forEachRemaining(receiver);
    }
  }

  /**
   * The next samples of a production in a span, in time order; so that a long span is read in
   * pieces between which the same transaction may write.
   */
  public List<Stored> next(Span span, Piece piece) {
    String since =
        piece.after().isPresent()
            ? " AND s.taken_at >= :from AND (s.taken_at > :from OR s.roll > :roll"
                + " OR (s.roll = :roll AND s.sample > :sample))"
            : " AND s.taken_at >= :from";
    Query query =
        handle
            .createQuery(
                SELECT
                    + " WHERE s.production_id = "
                    + BlockTable.PRODUCTION
                    + since
                    + " AND s.taken_at <= :to ORDER BY s.taken_at, s.roll, s.sample LIMIT :most")
            .bind("line", piece.line())
            .bind("structure", piece.structure())
            .bind("from", Times.toMicros(piece.after().map(Sample::takenAt).orElse(span.from())))
            .bind("to", Times.toMicros(span.to()))
            .bind("most", piece.most());
    piece
        .after()
        .map(Sample::key)
        .ifPresent(key -> query.bind("roll", key.roll()).bind("sample", key.sample()));
    return query.map((row, context) -> stored(row)).list();
  }

  /** Gives every sample to a receiver, one at a time, in the order in which they came. */
  public void forEach(Consumer<Stored> receiver) {
    try (ResultIterator<Stored> samples =
        handle
            .createQuery(SELECT + " ORDER BY s.id")
            .map((row, context) -> stored(row))
            .iterator()) {
      samples.forEachRemaining(receiver);
    }
  }

  /** Keeps samples that are new or changed, each of them once, with their figures. */
  public void write(List<Change> changes, Origin origin) {
    Map<List<String>, List<Change>> byProduction =
        changes.stream()
            .collect(
                Collectors.groupingBy(
                    change -> List.of(change.now.key().line(), change.now.key().structure()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    byProduction.values().forEach(some -> new SampleWrite(handle, database, origin).write(some));
  }

  /**
   * Keeps other figures for samples whose readings stay as they are.
   *
   * @param samples of one production, none of them thinned
   */
  public void refigure(List<Stored> samples, Function<Sample, List<Optional<Subgroup>>> figures) {
    if (samples.isEmpty()) {
      return;
    }
    SampleKey any = samples.get(0).sample().key();
    long productionId =
        handle
            .createQuery("SELECT id FROM production WHERE line = :line AND structure = :structure")
            .bind("line", any.line())
            .bind("structure", any.structure())
            .mapTo(Long.class)
            .one();
    List<BlockEntry> leave = new ArrayList<>();
    List<BlockEntry> enter = new ArrayList<>();
    for (Stored stored : samples) {
      leave.add(BlockEntry.of(stored, List.of()));
      enter.add(BlockEntry.of(stored, figures.apply(stored.sample())));
    }
    new BlockTable(handle, database).change(productionId, leave, enter);
  }

  /** What all lines have made, by line, the newest first. */
  public List<Production> productions() {
    return handle
        .createQuery("SELECT * FROM production ORDER BY line, last_at DESC, structure")
        .map(
            (row, context) ->
                new Production(
                    row.getString("line"),
                    row.getString("structure"),
                    row.getLong("samples"),
                    Times.toInstant(row.getLong("last_at"))))
        .list();
  }

  /** When the latest samples of a production before a moment were taken, in time order. */
  public List<Instant> timesBefore(String line, String structure, Instant moment, int most) {
    List<Instant> latestFirst =
        handle
            .createQuery(
                "SELECT taken_at FROM sample WHERE production_id = "
                    + BlockTable.PRODUCTION
                    + " AND taken_at < :moment ORDER BY taken_at DESC LIMIT :most")
            .bind("line", line)
            .bind("structure", structure)
            .bind("moment", Times.toMicros(moment))
            .bind("most", most)
            .map((row, context) -> Times.toInstant(row.getLong(1)))
            .list();
    List<Instant> times = new ArrayList<>(latestFirst);
    Collections.reverse(times);
    return times;
  }

  /** How many samples of a production in a span have a temperature of the film. */
  public long countWithTemperature(String line, String structure, Span span) {
    return handle
        .createQuery(
            "SELECT count(*) FROM sample WHERE production_id = "
                + BlockTable.PRODUCTION
                + " AND taken_at BETWEEN :from AND :to AND celsius <> '[]' AND um <> '[]'")
        .bind("line", line)
        .bind("structure", structure)
        .bind("from", Times.toMicros(span.from()))
        .bind("to", Times.toMicros(span.to()))
        .mapTo(Long.class)
        .one();
  }

  /** How many samples of a line were taken from a moment on; no more than {@code most} count. */
  public int countSince(String line, Instant moment, int most) {
    return handle
        .createQuery(
            "SELECT count(*) FROM (SELECT 1 FROM sample s JOIN production p"
                + " ON p.id = s.production_id WHERE p.line = :line AND s.taken_at >= :moment"
                + " LIMIT :most) AS counted")
        .bind("line", line)
        .bind("moment", Times.toMicros(moment))
        .bind("most", most)
        .mapTo(Integer.class)
        .one();
  }

  /**
   * When a line's samples of anything else were taken, in time order: the latest before a moment,
   * and all from then on.
   */
  public List<Instant> timesOfOthers(String line, String structure, Instant moment) {
    return timesOfOthers(line, structure, Span.since(moment));
  }

  /** The same for a span: the latest before it, and all of it. */
  public List<Instant> timesOfOthers(String line, String structure, Span span) {
    List<Instant> times = new ArrayList<>();
    for (Production made : productions()) {
      if (made.line().equals(line) && !made.structure().equals(structure)) {
        times.addAll(timesBefore(line, made.structure(), span.from(), 1));
        times.addAll(timesWithin(line, made, span));
      }
    }
    times.sort(null);
    return times;
  }

  private List<Instant> timesWithin(String line, Production made, Span span) {
    return made.lastAt().isBefore(span.from())
        ? List.of()
        : handle
            .createQuery(
                "SELECT taken_at FROM sample WHERE production_id = "
                    + BlockTable.PRODUCTION
                    + " AND taken_at BETWEEN :from AND :to")
            .bind("line", line)
            .bind("structure", made.structure())
            .bind("from", Times.toMicros(span.from()))
            .bind("to", Times.toMicros(span.to()))
            .map((row, context) -> Times.toInstant(row.getLong(1)))
            .list();
  }

  /** When a line first made something else after a moment. */
  public Optional<Instant> changedAfter(String line, String structure, Instant moment) {
    return productions().stream()
        .filter(made -> made.line().equals(line) && !made.structure().equals(structure))
        .filter(made -> made.lastAt().isAfter(moment))
        .map(made -> firstAfter(line, made.structure(), moment))
        .flatMap(Optional::stream)
        .min(Comparator.naturalOrder());
  }

  private Optional<Instant> firstAfter(String line, String structure, Instant moment) {
    return handle
        .createQuery(
            "SELECT min(taken_at) FROM sample WHERE production_id = "
                + BlockTable.PRODUCTION
                + " AND taken_at > :moment")
        .bind("line", line)
        .bind("structure", structure)
        .bind("moment", Times.toMicros(moment))
        .mapTo(Long.class)
        .findOne()
        .map(Times::toInstant);
  }

  static Stored stored(ResultSet row) throws SQLException {
    return new Stored(row.getLong("id"), row.getLong("file_id"), sample(row));
  }

  private static Sample sample(ResultSet row) throws SQLException {
    SampleKey key =
        new SampleKey(
            row.getString("line"),
            row.getString("structure"),
            row.getString("roll"),
            row.getString("sample"));
    Sample sample =
        new Sample(
            key,
            Times.toInstant(row.getLong("taken_at")),
            ReadingArray.lanes(row.getString("lanes")),
            ReadingArray.readings(row.getString("um")));
    String celsius = row.getString("celsius");
    return celsius.equals(ReadingArray.NOTHING)
        ? sample
        : sample.atCelsius(ReadingArray.celsius(celsius));
  }
}
