package dev.filmward.pipeline;

import dev.filmward.alarm.Acknowledgement;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlreadyTakenException;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.Mapping;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.StructuresFault;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.TestsVersion;
import dev.filmward.rule.price.RunLengthBook;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.FileEntry;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.Store;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * The plant as Filmward keeps it: files come in, are stored and judged, people freeze limits and
 * deal with alarms, listeners hear of it. Thread-safe; each change is one transaction at least.
 */
public final class Plant implements AutoCloseable {
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;
  private final StructureBook structures;
  private final Judging judging;
  private final RunLengthBook runLengths = new RunLengthBook();
  private final MappingBook mappings;
  private final Mending mending;
  private final HoldDesk holds;
  private final LineDesk lines;
  private final AlarmDesk alarmDesk;
  private final RollsDesk rolls;
  private final ScreeningDesk screening;
  private final RescalingDesk rescaling;
  private final GaugeDesk gauges;
  private final CheckDesk gaugeChecks;
  private final CauseBook causeBook;
  private final DiagnosisDesk diagnoses;
  private final AlarmNews.Source news;
  private final LineChanges changes = new LineChanges();
  private final List<Consumer<PlantEvent>> listeners = new CopyOnWriteArrayList<>();

  public Plant(Store store, Clock clock, ZoneId zone) {
    this(store, clock, zone, MappingBook.none());
  }

  /**
   * @param mappings through which files with headings of their own are read
   */
  public Plant(Store store, Clock clock, ZoneId zone, MappingBook mappings) {
    this.mappings = mappings;
    this.store = store;
    this.clock = clock;
    this.zone = zone;
    this.structures = new StructureBook(store, clock, this::tellOfStructures);
    this.news = AlarmNews.Source.of(structures::current, zone, clock::instant);
    this.judging = new Judging(clock, this::tell, news, structures::current);
    this.mending = new Mending(this, this::read);
    this.holds = new HoldDesk(this, news, this::tell);
    this.lines = new LineDesk(this, judging, news, this::tell);
    this.diagnoses = new DiagnosisDesk(this);
    this.alarmDesk = new AlarmDesk(this, news, this::tell);
    this.rolls = new RollsDesk(store, clock, structures, this::tell);
    this.screening = new ScreeningDesk(this, judging, this::tell);
    this.rescaling = new RescalingDesk(this, judging, this::tell);
    this.gauges = new GaugeDesk(this, rescaling, this::tell);
    this.gaugeChecks = new CheckDesk(this, judging, this::tell);
    this.causeBook = new CauseBook(store, clock);
  }

  /** Listeners are called after the change is stored, on the thread that made it. */
  public void listen(Consumer<PlantEvent> listener) {
    listeners.add(listener);
  }

  public Store store() {
    return store;
  }

  public Clock clock() {
    return clock;
  }

  public ZoneId zone() {
    return zone;
  }

  public Structures structures() {
    return structures.current();
  }

  /** Lets a version that was planned take hold once its moment has come, and tells of it. */
  void lookAtStructures() {
    structures.tell();
  }

  /** What is made of them is judged and drawn otherwise from now on. */
  private void tellOfStructures(Set<String> codes) {
    store.read(tables -> tables.samples().productions()).stream()
        .filter(made -> codes.contains(made.structure()))
        .forEach(made -> tell(new PlantEvent.LimitsFrozen(made.line(), made.structure())));
  }

  /** The versions of a structure by their time. */
  public StructureTimes times(Structure structure) {
    return structures.times(structure);
  }

  StructureBook structureBook() {
    return structures;
  }

  /** Counts what happens to lines. */
  public LineChanges changes() {
    return changes;
  }

  public MappingBook mappings() {
    return mappings;
  }

  /** Where alarms are held back. */
  public HoldDesk holds() {
    return holds;
  }

  /** Where people say what lines are doing. */
  public LineDesk lines() {
    return lines;
  }

  /**
   * Learns structures from a file in YAML.
   *
   * @throws StructuresFault saying all that is wrong with it
   */
  public void learnStructures(String fileName, byte[] yaml) throws StructuresFault {
    learnStructures(fileName, yaml, Audited.NOT_NAMED);
  }

  /** The same, brought by a person. */
  public void learnStructures(String fileName, byte[] yaml, String by) throws StructuresFault {
    structures.add(fileName, yaml, by);
  }

  /**
   * The same at a start: a file that was given at a start before does not undo what people decided
   * since.
   */
  public void learnStructuresAtStart(String fileName, byte[] yaml) throws StructuresFault {
    structures.addAtStart(fileName, yaml, Audited.NOT_NAMED);
  }

  /**
   * Keeps a mapping for files with headings of their own.
   *
   * @throws MappingFault saying all that is wrong with it
   * @throws IllegalArgumentException if another is for the same files
   */
  public Mapping keepMapping(byte[] yaml, String by) throws MappingFault, IOException {
    Mapping kept = mappings.keep(yaml);
    store.change(tables -> tables.audit().add(Audited.mapping(kept, yaml, by, clock.instant())));
    return kept;
  }

  /** Reads a file of readings into the store and judges what is new. */
  public FileEntry read(IncomingFile file) {
    ReadingsParser parser = new ReadingsParser(structures.current(), zone, mappings.current());
    return read(file, in -> parser.head(in, file.name()));
  }

  private FileEntry read(IncomingFile file, Importer.Opening opening) {
    FileEntry entry = new Importer(store, judging, clock.instant()).read(file, opening);
    tell(new PlantEvent.FileCame(entry));
    return entry;
  }

  /**
   * A file and the first of its rows in quarantine, mended ones too.
   *
   * @throws NoSuchElementException if there is no such file
   */
  public HeldFile quarantine(long fileId, int most) {
    return mending.held(fileId, tables -> tables.heldRows().of(fileId, most));
  }

  /** The same, without the rows that were mended. */
  public HeldFile openQuarantine(long fileId, int most) {
    return mending.held(fileId, tables -> tables.heldRows().open(fileId, most));
  }

  /**
   * Submits rows in quarantine again, as they were mended; those that can be used come as a file of
   * their own.
   *
   * @throws NoSuchElementException if there is no such file or row
   * @throws IllegalStateException if a row was mended before, or none of this file can be
   * @throws IllegalArgumentException if a line is submitted with two texts
   */
  public MendReport mend(long fileId, List<MendedText> texts, String by) {
    return mending.mend(fileId, texts, by);
  }

  /**
   * Freezes control limits for all characteristics of what a line makes: from its first samples
   * where it has none yet, else from its last ones.
   *
   * @throws NoSuchElementException if the structure is not known
   * @throws IllegalStateException if there are too few samples
   */
  public FrozenLimits freezeLimits(
      String line, String structureCode, int subgroups, Decision decision) {
    BaselineChoice choice =
        hasLimits(line, structureCode)
            ? BaselineChoice.last(subgroups)
            : BaselineChoice.first(subgroups);
    return putInForce(line, structureCode, choice, new StateChange(LimitsState.FROZEN, decision));
  }

  /**
   * Puts a new version of control limits in force, provisional or frozen, and judges what they hold
   * for.
   *
   * @throws NoSuchElementException if the structure is not known
   * @throws IllegalStateException if there are too few samples
   * @throws IllegalArgumentException if limits cannot begin in that state, or would be frozen while
   *     neighbouring samples are much alike and nobody said what is done about it
   */
  public FrozenLimits putInForce(
      String line, String structureCode, BaselineChoice choice, StateChange change) {
    if (!LimitsState.TRIAL.mayBecome(change.state())) {
      throw new IllegalArgumentException(
          "new limits are provisional or frozen, not " + change.state().word());
    }
    Production production = new Production(line, structure(structureCode));
    Freezing done =
        store.write(
            tables -> {
              FrozenLimits frozen = LimitsDesk.freeze(tables, production, choice, change);
              tables.audit().add(Audited.limits(production, frozen, change));
              return new Freezing(
                  frozen,
                  judging.begin(tables).judgeAll(line, production.structure(), frozen.holdsFrom()));
            });
    done.afterwards().run();
    tell(new PlantEvent.LimitsFrozen(line, structureCode));
    return done.frozen();
  }

  /** Whether limits were ever put in force for what a line makes of a structure. */
  public boolean hasLimits(String line, String structureCode) {
    return store.read(tables -> tables.limits().newestVersion(line, structureCode) > 0);
  }

  /**
   * Works out what a baseline would give, beside what is in force; nothing is changed.
   *
   * @throws NoSuchElementException if the structure is not known
   */
  public LimitsProposal proposeLimits(String line, String structureCode, BaselineChoice choice) {
    Production production = new Production(line, structure(structureCode));
    return store.read(tables -> new LimitsProposer(tables, production).propose(choice));
  }

  /**
   * Moves a version of limits into another state: frozen, suspect or retired.
   *
   * @throws NoSuchElementException if there is no such version
   * @throws IllegalStateException if it cannot become that
   * @throws IllegalArgumentException as {@link #putInForce}
   */
  public void moveLimits(VersionKey key, StateChange change) {
    moveLimits(key, change, Optional.empty());
  }

  /** The same, saying what is done about neighbouring samples that are alike. */
  public void moveLimits(
      VersionKey key, StateChange change, Optional<AutocorrelationRemedy> remedy) {
    Optional<Production> production =
        structures
            .current()
            .find(key.structure())
            .map(structure -> new Production(key.line(), structure));
    store.change(
        tables -> {
          remedy.ifPresent(chosen -> tables.limits().remedy(key, chosen.word(), change.decision()));
          LimitsDesk.move(tables, key, change, production);
          tables.audit().add(Audited.moved(key, change));
        });
    tell(new PlantEvent.LimitsFrozen(key.line(), key.structure()));
  }

  /** Which tests are shown and raise alarms for what a line makes of a structure. */
  public ChosenTests tests(String line, String structureCode) {
    return store.read(tables -> tables.tests().of(line, structureCode));
  }

  /**
   * Works out what tests cost, and which alarms they would have raised; nothing is changed.
   *
   * @param change what is not named is as it is
   * @throws NoSuchElementException if the structure is not known
   * @throws IllegalArgumentException if a position is not charted
   */
  public TestsPrice priceTests(String line, String structureCode, TestsChange change) {
    Production production = new Production(line, structure(structureCode));
    return store.read(tables -> new TestsPricing(tables, production, runLengths).of(change));
  }

  /**
   * Chooses which tests are shown and raise alarms, from the next sample on.
   *
   * @param change what is not named stays
   * @throws NoSuchElementException if the structure is not known
   * @throws IllegalArgumentException if a position is not charted
   */
  public TestsVersion chooseTests(
      String line, String structureCode, TestsChange change, Decision decision) {
    Production production = new Production(line, structure(structureCode));
    TestsVersion chosen =
        store.write(
            tables -> {
              TestsVersion version = TestsDesk.choose(tables, production, change, decision);
              tables.audit().add(Audited.tests(production, version));
              return version;
            });
    tell(new PlantEvent.LimitsFrozen(line, structureCode));
    return chosen;
  }

  /**
   * Notes that a person has seen an alarm and takes it on.
   *
   * @throws NoSuchElementException if there is no such alarm
   * @throws AlreadyTakenException if somebody took it on before
   */
  public Alarm acknowledge(long alarmId, String by) {
    Instant now = clock.instant();
    return change(
        alarmId,
        alarm -> alarm.acknowledge(new Acknowledgement(by, now)),
        new HistoryEntry(now, by, "seen, mine"));
  }

  /** What people do about alarms after they took them. */
  public AlarmDesk alarmDesk() {
    return alarmDesk;
  }

  /** What becomes of rolls. */
  public RollsDesk rolls() {
    return rolls;
  }

  /** Where people decide about samples that look misread. */
  public ScreeningDesk screening() {
    return screening;
  }

  /** Where readings are given another velocity. */
  public RescalingDesk rescaling() {
    return rescaling;
  }

  /** The gauges, their settings and calibrations. */
  public GaugeDesk gauges() {
    return gauges;
  }

  /** The known films that gauges are checked on. */
  public CheckDesk gaugeChecks() {
    return gaugeChecks;
  }

  /** The causes to choose from, and the plan of first checks. */
  public CauseBook causeBook() {
    return causeBook;
  }

  /** What changed and why. */
  public DiagnosisDesk diagnoses() {
    return diagnoses;
  }

  @Override
  public void close() {
    store.close();
  }

  private Alarm change(long alarmId, UnaryOperator<Alarm> step, HistoryEntry entry) {
    Alarm changed =
        store.write(
            tables -> {
              Alarm alarm =
                  tables
                      .alarms()
                      .find(alarmId)
                      .orElseThrow(() -> new NoSuchElementException("no alarm " + alarmId));
              Alarm kept = tables.alarms().save(step.apply(alarm));
              tables.alarms().note(alarmId, entry);
              AlarmNews told = news.begin(tables);
              told.changed(Optional.of(alarm), kept);
              told.write();
              tables.audit().add(Audited.alarm(kept, entry));
              return kept;
            });
    tell(
        new PlantEvent.AlarmChanged(
            changed.id(), changed.subject().line(), changed.state().word()));
    return changed;
  }

  private record Freezing(FrozenLimits frozen, Runnable afterwards) {}

  private Structure structure(String code) {
    return structures
        .current()
        .find(code)
        .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
  }

  void tell(PlantEvent event) {
    changes.hear(event);
    listeners.forEach(listener -> listener.accept(event));
  }
}
