package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.ScreeningTable.Decided;
import dev.filmward.store.ScreeningTable.Question;
import dev.filmward.store.ScreeningVersion;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * People decide about samples that look misread, and how readings are screened. Thread-safe; each
 * change is one transaction, with its entry of the audit chain.
 */
public final class ScreeningDesk {
  private final Plant plant;
  private final Judging judging;
  private final Consumer<PlantEvent> listener;

  ScreeningDesk(Plant plant, Judging judging, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.judging = judging;
    this.listener = listener;
  }

  /**
   * A sample that looks misread, or about which somebody decided.
   *
   * @param usual thickness by layer that was usual then, um; NaN where it is not known
   * @param decisions first to last
   */
  public record Suspect(ScreenedSample screened, List<Double> usual, List<Decided> decisions) {
    public Suspect {
      usual = List.copyOf(usual);
      decisions = List.copyOf(decisions);
    }
  }

  /** Suspects, newest first. */
  public List<Suspect> list(Question question) {
    return plant
        .store()
        .read(
            tables ->
                tables.screening().newest(question).stream()
                    .map(screened -> suspect(tables, screened))
                    .toList());
  }

  /**
   * One of them.
   *
   * @throws NoSuchElementException if there is no such sample
   */
  public Suspect get(long sampleId) {
    return plant.store().read(tables -> suspect(tables, find(tables, sampleId)));
  }

  private Suspect suspect(Tables tables, ScreenedSample screened) {
    Sample sample = screened.stored().sample();
    List<Double> usual =
        plant
            .structures()
            .find(sample.key().structure())
            .map(film -> new Production(sample.key().line(), film))
            .map(made -> new Screening(tables, made, plant.structures(), now()))
            .map(screening -> screening.usualUm(sample))
            .orElse(List.of());
    return new Suspect(screened, usual, tables.screening().decisions(screened.stored().id()));
  }

  /**
   * Puts a sample back, confirms that it was misread, or leaves it out though no rule did; alarms
   * are worked out again from it on.
   *
   * @param state one that a person decides
   * @throws NoSuchElementException if there is no such sample
   * @throws IllegalStateException if it stands so already, or its readings were thinned
   */
  public Suspect decide(long sampleId, ScreeningState state, Decision decision) {
    if (!state.isDecided()) {
      throw new IllegalArgumentException(
          "a person puts a sample back, confirms it or leaves it out, not \""
              + state.word()
              + "\"");
    }
    Runnable afterwards =
        plant.store().write(tables -> decide(tables, find(tables, sampleId), state, decision));
    afterwards.run();
    Suspect decided = get(sampleId);
    tell(decided.screened().stored().sample());
    return decided;
  }

  private Runnable decide(
      Tables tables, ScreenedSample before, ScreeningState state, Decision decision) {
    Sample sample = before.stored().sample();
    if (before.stored().isThinned()) {
      throw new IllegalStateException("the readings of this sample were thinned to their figures");
    }
    if (before.state().filter(state::equals).isPresent()) {
      throw new IllegalStateException("this sample is " + state.word() + " already");
    }
    Structure film = structure(sample.key().structure());
    tables.screening().decide(before.stored().id(), new Decided(state, decision));
    tables
        .screening()
        .replace(
            List.of(new ScreenedSample(before.stored(), Optional.of(state), before.flags())),
            decision.at());
    tables.audit().add(Audited.screened(sample.key(), state, decision));
    return judging.begin(tables).screenAgain(List.of(before.stored()), film);
  }

  /** All versions of how readings of a structure on a line are screened, first to last. */
  public List<ScreeningVersion> versions(String line, String structureCode) {
    return plant.store().read(tables -> tables.screeningVersions().of(line, structureCode));
  }

  /**
   * Screens in another way, from the next sample on.
   *
   * @throws NoSuchElementException if the structure is not known
   */
  public ScreeningVersion set(
      String line, String structureCode, ScreeningRules rules, Decision decision) {
    Production production = new Production(line, structure(structureCode));
    ScreeningVersion added =
        plant
            .store()
            .write(
                tables -> {
                  int before = tables.screeningVersions().of(line, structureCode).size();
                  ScreeningVersion version =
                      new ScreeningVersion(
                          before + 1,
                          rules,
                          production.next(tables).orElse(Span.always().from()),
                          decision);
                  tables.screeningVersions().add(line, structureCode, version);
                  tables.audit().add(Audited.screening(production, version));
                  return version;
                });
    listener.accept(new PlantEvent.LimitsFrozen(line, structureCode));
    return added;
  }

  /**
   * How many readings of each lane were not measured, day by day.
   *
   * @throws NoSuchElementException if the structure is not known
   */
  public List<MissingShare> missing(String line, String structureCode, Instant since) {
    structure(structureCode);
    MissingTally tally = new MissingTally(plant.zone());
    plant.store().read(tables -> tally.read(tables, line, structureCode, since));
    return tally.shares();
  }

  private static ScreenedSample find(Tables tables, long sampleId) {
    return tables
        .screening()
        .find(sampleId)
        .orElseThrow(() -> new NoSuchElementException("no sample " + sampleId));
  }

  private Structure structure(String code) {
    return plant
        .structures()
        .find(code)
        .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
  }

  private Instant now() {
    return plant.clock().instant();
  }

  private void tell(Sample sample) {
    listener.accept(new PlantEvent.LimitsFrozen(sample.key().line(), sample.key().structure()));
  }
}
