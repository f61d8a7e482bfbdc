package dev.filmward.pipeline;

import static java.util.stream.Collectors.joining;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.LineMode;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.pipeline.Board.Ask;
import dev.filmward.pipeline.Board.CharacteristicState;
import dev.filmward.pipeline.Board.HeldOut;
import dev.filmward.pipeline.Board.LimitsInForce;
import dev.filmward.pipeline.Board.LineState;
import dev.filmward.pipeline.Board.OpenAlarms;
import dev.filmward.pipeline.LineGlances.Glance;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.Tables;
import dev.filmward.store.Watched;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** Reads the state of all lines from the store. Thread-safe. */
public final class BoardReader {
  static final int RECENT = 60;

  /** A line is stale when its next sample is overdue by half the usual interval and this. */
  static final Duration GRACE = Duration.ofSeconds(10);

  private final Plant plant;
  private final LineGlances glances;

  public BoardReader(Plant plant) {
    this.plant = plant;
    this.glances = new LineGlances(plant.changes());
  }

  /** A board, and whether it would show the same but for the time that has passed. */
  public record Seen(Board board, BooleanSupplier isCurrent) {}

  public Board read() {
    return look().board();
  }

  /** Reads the board, and says afterwards whether anything has happened that it shows. */
  public Seen look() {
    long before = plant.changes().ofAll();
    Structures structures = plant.structures();
    Watched<Board> board = read(structures);
    return new Seen(
        board.value(),
        () ->
            plant.changes().ofAll() == before
                && plant.structures().equals(structures)
                && board.isCurrent());
  }

  private Watched<Board> read(Structures structures) {
    Instant now = plant.clock().instant();
    return plant
        .store()
        .watch(
            tables -> {
              List<Alarm> open = tables.alarms().open();
              Holding holding = new Holding(tables, now);
              List<LineState> lines = new ArrayList<>();
              for (Production made : newestOfEachLine(tables)) {
                structures
                    .find(made.structure())
                    .flatMap(structure -> line(tables, made, structure, holding, open))
                    .ifPresent(lines::add);
              }
              return new Board(now, lines);
            });
  }

  private static List<Production> newestOfEachLine(Tables tables) {
    Map<String, Production> newest = new LinkedHashMap<>();
    for (Production made : tables.samples().productions()) {
      newest.putIfAbsent(made.line(), made);
    }
    return List.copyOf(newest.values());
  }

  private Optional<LineState> line(
      Tables tables, Production made, Structure structure, Holding holding, List<Alarm> open) {
    List<Alarm> ofLine =
        open.stream().filter(alarm -> alarm.subject().line().equals(made.line())).toList();
    return glances
        .of(made.line(), structure, () -> glance(tables, made, structure))
        .map(glance -> state(structure, glance, holding, ofLine));
  }

  private static LineState state(
      Structure structure, Glance glance, Holding holding, List<Alarm> alarms) {
    String line = glance.last().line();
    boolean stale = isStale(glance.lastTakenAt(), glance.interval(), holding.now());
    LineMode mode = holding.mode(line);
    return new LineState(
        line,
        structure,
        first(alarms, mode, stale).orElseGet(() -> ofSample(glance)),
        stale,
        glance.last(),
        glance.lastTakenAt(),
        glance.interval(),
        mode,
        openAlarms(alarms),
        glance.limits(),
        glance.heldOut(),
        glance.states());
  }

  private static Optional<Glance> glance(Tables tables, Production made, Structure structure) {
    List<Stored> samples = tables.samples().newest(made.line(), made.structure(), RECENT);
    if (samples.isEmpty()) {
      return Optional.empty();
    }
    Stored last = samples.get(samples.size() - 1);
    return Optional.of(
        new Glance(
            last.sample().key(),
            last.sample().takenAt(),
            usualInterval(samples),
            limits(tables, made),
            heldOut(tables, last),
            new LastSampleReader(tables, structure).read(made.line(), samples)));
  }

  private static Optional<HeldOut> heldOut(Tables tables, Stored last) {
    return tables
        .screening()
        .find(last.id())
        .filter(ScreenedSample::isOutOfCharts)
        .map(
            screened ->
                new HeldOut(
                    screened.flags().stream().map(Flag::kind).distinct().toList(),
                    screened.flags().stream().map(Flag::evidence).collect(joining(" "))));
  }

  private static OpenAlarms openAlarms(List<Alarm> alarms) {
    return new OpenAlarms(
        alarms.size(),
        (int) alarms.stream().filter(alarm -> alarm.state().isWaiting()).count(),
        (int) alarms.stream().filter(alarm -> alarm.state().isHeld()).count());
  }

  /**
   * What asks of a person before anything that its last sample says.
   *
   * @param overdue whether its next sample is
   */
  private static Optional<Ask> first(List<Alarm> alarms, LineMode mode, boolean overdue) {
    if (alarms.stream().anyMatch(alarm -> alarm.state().asksForSomebody())) {
      return Optional.of(Ask.ACT);
    }
    if (mode.suppresses()) {
      return Optional.of(Ask.NOT_RUNNING);
    }
    return overdue ? Optional.of(Ask.STALE) : Optional.empty();
  }

  private static Ask ofSample(Glance glance) {
    if (!glance.limits().state().raisesAlarms()) {
      return Ask.COLLECTING;
    }
    if (glance.heldOut().isPresent()) {
      return Ask.GAUGE;
    }
    List<CharacteristicState> states = glance.states();
    boolean signals =
        states.stream().anyMatch(state -> !state.signals().isEmpty() || state.outOfSpec() > 0);
    return signals ? Ask.WATCH : Ask.CALM;
  }

  private static LimitsInForce limits(Tables tables, Production made) {
    int version = tables.limits().newestVersion(made.line(), made.structure());
    List<StateChange> changes =
        tables.limits().changes(new VersionKey(made.line(), made.structure(), version));
    LimitsState state =
        changes.isEmpty()
            ? made.samples() >= LimitsDesk.FEWEST ? LimitsState.TRIAL : LimitsState.COLLECTING
            : changes.get(changes.size() - 1).state();
    return new LimitsInForce(state, version, made.samples());
  }

  /** The median gap between the last samples. */
  private static Optional<Duration> usualInterval(List<Stored> samples) {
    if (samples.size() < 3) {
      return Optional.empty();
    }
    List<Duration> gaps = new ArrayList<>();
    for (int i = 1; i < samples.size(); i++) {
      gaps.add(
          Duration.between(
              samples.get(i - 1).sample().takenAt(), samples.get(i).sample().takenAt()));
    }
    gaps.sort(null);
    return Optional.of(gaps.get(gaps.size() / 2));
  }

  private static boolean isStale(Instant last, Optional<Duration> interval, Instant now) {
    return interval
        .map(usual -> usual.plus(usual.dividedBy(2)).plus(GRACE))
        .map(allowed -> Duration.between(last, now).compareTo(allowed) > 0)
        .orElse(false);
  }
}
