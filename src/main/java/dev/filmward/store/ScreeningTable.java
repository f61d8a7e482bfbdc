package dev.filmward.store;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.SampleKey;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.Screen;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.store.FigureTable.Span;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.Query;

/** Which samples look misread, and what people decided about them. */
public final class ScreeningTable {
  private static final int IDS_AT_ONCE = 500;
  private static final String SELECT =
      "SELECT s.*, p.line, p.structure, c.state FROM sample s"
          + " JOIN production p ON p.id = s.production_id"
          + " LEFT JOIN sample_screening c ON c.sample_id = s.id WHERE s.production_id = "
          + BlockTable.PRODUCTION;
  private static final String HAS_FLAG =
      "EXISTS (SELECT 1 FROM sample_flag f WHERE f.sample_id = s.id AND ";
  private static final String FORWARD = " ORDER BY s.taken_at, s.roll, s.sample";
  private static final String BACKWARD = " ORDER BY s.taken_at DESC, s.roll DESC, s.sample DESC";

  private final Handle handle;

  ScreeningTable(Handle handle) {
    this.handle = handle;
  }

  /**
   * Which flagged samples are asked for.
   *
   * @param states at least one
   * @param kind samples with a flag of it
   * @param most how many at most
   */
  public record Question(
      Optional<String> line,
      Optional<String> structure,
      Optional<Misread> kind,
      List<ScreeningState> states,
      Depth depth,
      int most) {
    public Question {
      states = List.copyOf(states);
    }
  }

  /** How deep a list goes. */
  public enum Depth {
    /** Without samples that only lack a reading or a lane. */
    WITHOUT_MERE_GAPS,
    ALL
  }

  /** What a person decided about a sample. */
  public record Decided(ScreeningState state, Decision decision) {}

  /** The latest samples before a moment, oldest first, without their flags. */
  public List<ScreenedSample> before(String line, String structure, Instant moment, int most) {
    List<ScreenedSample> latestFirst =
        samples(
            of(
                    line,
                    structure,
                    " AND s.taken_at < :at AND s.um <> '[]'" + BACKWARD + " LIMIT :most")
                .bind("at", Times.toMicros(moment))
                .bind("most", most));
    Collections.reverse(latestFirst);
    return latestFirst;
  }

  /** The samples of a span in time order, with their flags. */
  public List<ScreenedSample> within(String line, String structure, Span span) {
    return withFlags(
        samples(
            of(line, structure, " AND s.taken_at BETWEEN :from AND :to AND s.um <> '[]'" + FORWARD)
                .bind("from", Times.toMicros(span.from()))
                .bind("to", Times.toMicros(span.to()))));
  }

  /** The first samples after a moment in time order, with their flags. */
  public List<ScreenedSample> after(String line, String structure, Instant moment, int most) {
    return withFlags(
        samples(
            of(line, structure, " AND s.taken_at > :at AND s.um <> '[]'" + FORWARD + " LIMIT :most")
                .bind("at", Times.toMicros(moment))
                .bind("most", most)));
  }

  private Query of(String line, String structure, String rest) {
    return handle.createQuery(SELECT + rest).bind("line", line).bind("structure", structure);
  }

  private static List<ScreenedSample> samples(Query query) {
    return query
        .map((row, context) -> new ScreenedSample(SampleTable.stored(row), state(row), List.of()))
        .list();
  }

  private static Optional<ScreeningState> state(ResultSet row) throws SQLException {
    return Optional.ofNullable(row.getString("state")).map(ScreeningState::fromWord);
  }

  private List<ScreenedSample> withFlags(List<ScreenedSample> samples) {
    Map<Long, List<Flag>> flags =
        flags(
            samples.stream()
                .filter(sample -> sample.state().isPresent())
                .map(sample -> sample.stored().id())
                .toList());
    return samples.stream()
        .map(
            sample ->
                new ScreenedSample(
                    sample.stored(),
                    sample.state(),
                    flags.getOrDefault(sample.stored().id(), List.of())))
        .toList();
  }

  /** Samples of a span that are left out of charts. */
  public Set<SampleKey> outOfCharts(String line, String structure, Span span) {
    return new HashSet<>(
        handle
            .createQuery(
                "SELECT s.roll, s.sample, c.state FROM sample_screening c"
                    + " JOIN sample s ON s.id = c.sample_id WHERE c.production_id = "
                    + BlockTable.PRODUCTION
                    + " AND c.taken_at BETWEEN :from AND :to"
                    + " AND c.state IN ('held-out', 'confirmed', 'left-out')")
            .bind("line", line)
            .bind("structure", structure)
            .bind("from", Times.toMicros(span.from()))
            .bind("to", Times.toMicros(span.to()))
            .map(
                (row, context) ->
                    new SampleKey(line, structure, row.getString("roll"), row.getString("sample")))
            .list());
  }

  /** Samples of a span that have flags or decisions, with their flags, in time order. */
  public List<ScreenedSample> flagged(String line, String structure, Span span) {
    return withFlags(
        samples(
            of(
                    line,
                    structure,
                    " AND s.id IN (SELECT f.sample_id FROM sample_screening f WHERE"
                        + " f.production_id = "
                        + BlockTable.PRODUCTION
                        + " AND f.taken_at BETWEEN :from AND :to)"
                        + FORWARD)
                .bind("from", Times.toMicros(span.from()))
                .bind("to", Times.toMicros(span.to()))));
  }

  /** Samples with flags or decisions, newest first. */
  public List<ScreenedSample> newest(Question question) {
    String where =
        " WHERE c.state IN (<states>)"
            + question.line.map(line -> " AND p.line = :line").orElse("")
            + question.structure.map(code -> " AND p.structure = :structure").orElse("")
            + question.kind.map(kind -> " AND " + HAS_FLAG + "f.kind = :kind)").orElse("")
            + (question.depth == Depth.ALL
                ? ""
                : " AND (c.state <> 'marked' OR "
                    + HAS_FLAG
                    + "f.kind NOT IN ('lost-echo', 'lane-missing')))");
    Query query =
        handle
            .createQuery(
                "SELECT s.*, p.line, p.structure, c.state FROM sample_screening c"
                    + " JOIN sample s ON s.id = c.sample_id"
                    + " JOIN production p ON p.id = c.production_id"
                    + where
                    + " ORDER BY c.taken_at DESC, s.id DESC LIMIT :most")
            .bindList("states", question.states.stream().map(ScreeningState::word).toList())
            .bind("most", question.most);
    question.line.ifPresent(line -> query.bind("line", line));
    question.structure.ifPresent(code -> query.bind("structure", code));
    question.kind.ifPresent(kind -> query.bind("kind", kind.word()));
    return withFlags(samples(query));
  }

  /** A sample with its flags, by its id. */
  public Optional<ScreenedSample> find(long sampleId) {
    return withFlags(
            samples(
                handle
                    .createQuery(
                        "SELECT s.*, p.line, p.structure, c.state FROM sample s"
                            + " JOIN production p ON p.id = s.production_id"
                            + " LEFT JOIN sample_screening c ON c.sample_id = s.id"
                            + " WHERE s.id = :id")
                    .bind("id", sampleId)))
        .stream()
        .findFirst();
  }

  /** Flags of samples by their ids, in the order in which they were written. */
  public Map<Long, List<Flag>> flags(List<Long> sampleIds) {
    Map<Long, List<Flag>> flags = new HashMap<>();
    for (int from = 0; from < sampleIds.size(); from += IDS_AT_ONCE) {
      handle
          .createQuery("SELECT * FROM sample_flag WHERE sample_id IN (<ids>) ORDER BY id")
          .bindList("ids", sampleIds.subList(from, Math.min(sampleIds.size(), from + IDS_AT_ONCE)))
          .map(
              (row, context) -> {
                flags
                    .computeIfAbsent(row.getLong("sample_id"), id -> new ArrayList<>())
                    .add(flag(row));
                return flags;
              })
          .list();
    }
    return flags;
  }

  private static Flag flag(ResultSet row) throws SQLException {
    return new Flag(
        Misread.fromWord(row.getString("kind")),
        numbers(row.getString("positions")),
        numbers(row.getString("lanes")),
        Flag.Strength.fromWord(row.getString("strength")),
        Flag.Effect.valueOf(row.getString("effect")),
        row.getString("evidence"));
  }

  /** Keeps other flags, and how they make samples stand, in the place of what was there. */
  public void replace(Collection<ScreenedSample> samples, Instant now) {
    if (samples.isEmpty()) {
      return;
    }
    PreparedBatch forget = handle.prepareBatch("DELETE FROM sample_flag WHERE sample_id = :id");
    samples.forEach(sample -> forget.bind("id", sample.stored().id()).add());
    forget.execute();
    PreparedBatch add =
        handle.prepareBatch(
            "INSERT INTO sample_flag (sample_id, kind, positions, lanes, strength, effect,"
                + " evidence, rule_version, flagged_at) VALUES (:id, :kind, :positions, :lanes,"
                + " :strength, :effect, :evidence, :rule, :now)");
    samples.forEach(sample -> sample.flags().forEach(flag -> add(add, sample, flag, now)));
    if (add.size() > 0) {
      add.execute();
    }
    samples.forEach(this::replaceState);
  }

  private static void add(PreparedBatch batch, ScreenedSample sample, Flag flag, Instant now) {
    batch
        .bind("id", sample.stored().id())
        .bind("kind", flag.kind().word())
        .bind("positions", words(flag.positions()))
        .bind("lanes", words(flag.lanes()))
        .bind("strength", flag.strength().word())
        .bind("effect", flag.effect().name())
        .bind("evidence", flag.evidence())
        .bind("rule", Screen.RULE_VERSION)
        .bind("now", Times.toMicros(now))
        .add();
  }

  private void replaceState(ScreenedSample sample) {
    handle
        .createUpdate("DELETE FROM sample_screening WHERE sample_id = :id")
        .bind("id", sample.stored().id())
        .execute();
    if (sample.state().isPresent()) {
      SampleKey key = sample.stored().sample().key();
      handle
          .createUpdate(
              "INSERT INTO sample_screening (sample_id, production_id, taken_at, state)"
                  + " VALUES (:id, "
                  + BlockTable.PRODUCTION
                  + ", :at, :state)")
          .bind("id", sample.stored().id())
          .bind("line", key.line())
          .bind("structure", key.structure())
          .bind("at", Times.toMicros(sample.stored().sample().takenAt()))
          .bind("state", sample.state().get().word())
          .execute();
    }
  }

  /** Notes what a person decided about a sample. */
  public void decide(long sampleId, Decided decided) {
    handle
        .createUpdate(
            "INSERT INTO screening_decision (sample_id, state, author, reason, decided_at)"
                + " VALUES (:id, :state, :author, :reason, :at)")
        .bind("id", sampleId)
        .bind("state", decided.state.word())
        .bind("author", decided.decision.author())
        .bind("reason", decided.decision.reason())
        .bind("at", Times.toMicros(decided.decision.at()))
        .execute();
  }

  /** All that people decided about a sample, first to last. */
  public List<Decided> decisions(long sampleId) {
    return handle
        .createQuery("SELECT * FROM screening_decision WHERE sample_id = :id ORDER BY id")
        .bind("id", sampleId)
        .map(
            (row, context) ->
                new Decided(ScreeningState.fromWord(row.getString("state")), decision(row)))
        .list();
  }

  static Decision decision(ResultSet row) throws SQLException {
    return new Decision(
        row.getString("author"),
        row.getString("reason"),
        Times.toInstant(row.getLong("decided_at")));
  }

  private static String words(List<Integer> numbers) {
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }

  private static List<Integer> numbers(String words) {
    return Arrays.stream(words.split(" ", -1)).map(Integer::valueOf).toList();
  }
}
