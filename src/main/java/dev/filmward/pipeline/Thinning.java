package dev.filmward.pipeline;

import dev.filmward.store.AuditEntry;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.Tables;
import dev.filmward.store.ThinningTable.Place;
import dev.filmward.store.ThinningTable.Rule;
import dev.filmward.store.ThinningTable.Run;
import java.time.Instant;
import java.util.Optional;
import java.util.function.BiFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Thins old samples to their subgroup figures: the raw readings go, all that charts, tests, limits
 * and alarms need stays, so that none of them changes. Some thousand samples a transaction, each
 * with an entry in the audit chain of just these; where it is broken off, what is done is told.
 * Thread-safe; an import waits for one transaction at most.
 */
public final class Thinning {
  private static final Logger LOG = LoggerFactory.getLogger(Thinning.class);
  private static final int SAMPLES_PER_TRANSACTION = 20_000;

  private final Plant plant;

  public Thinning(Plant plant) {
    this.plant = plant;
  }

  /**
   * What a person wants.
   *
   * @param before samples that were taken before this lose their readings, but for the newest of
   *     each line and structure, which the board shows
   */
  public record Order(Instant before, String by, String reason) {
    public Order {
      if (by.isBlank() || reason.isBlank()) {
        throw new IllegalArgumentException("who thins, and why? Both are kept");
      }
    }
  }

  /** How many samples lost how many readings; the times are those of the first and last of them. */
  public record Outcome(long samples, long readings, Optional<Instant> from, Optional<Instant> to) {
    static final Outcome NOTHING = new Outcome(0, 0, Optional.empty(), Optional.empty());

    private Outcome with(Run run) {
      Instant first = from.filter(known -> known.isBefore(run.from())).orElse(run.from());
      Instant last = to.filter(known -> known.isAfter(run.to())).orElse(run.to());
      return new Outcome(
          samples + run.samples(),
          readings + run.readings(),
          Optional.of(first),
          Optional.of(last));
    }
  }

  /** Thins, and says what was thinned. */
  public Outcome run(Order order) {
    Outcome outcome =
        all((made, place) -> plant.store().write(tables -> thin(tables, made, place, order)));
    if (outcome.samples() > 0) {
      LOG.info(
          "{} thinned {} samples ({} readings), taken from {} to {}: {}",
          order.by,
          outcome.samples,
          outcome.readings,
          outcome.from.orElseThrow(),
          outcome.to.orElseThrow(),
          order.reason);
    }
    return outcome;
  }

  /** Says what would be thinned, and changes nothing. */
  public Outcome rehearse(Order order) {
    return all(
        (made, place) ->
            plant.store().read(tables -> tables.thinning().next(made, place, rule(order))));
  }

  private Outcome all(BiFunction<Production, Place, Optional<Run>> step) {
    Outcome outcome = Outcome.NOTHING;
    for (Production made : plant.store().read(tables -> tables.samples().productions())) {
      Optional<Run> run = step.apply(made, Place.BEGINNING);
      while (run.isPresent()) {
        outcome = outcome.with(run.get());
        run = step.apply(made, run.get().last());
      }
    }
    return outcome;
  }

  private Optional<Run> thin(Tables tables, Production made, Place place, Order order) {
    Optional<Run> run = tables.thinning().next(made, place, rule(order));
    run.ifPresent(
        found -> {
          Instant now = plant.clock().instant();
          tables.thinning().thin(made, place, found, now);
          tables.audit().add(entry(made, found, order, now));
        });
    return run;
  }

  private static Rule rule(Order order) {
    return new Rule(order.before, BoardReader.RECENT, SAMPLES_PER_TRANSACTION);
  }

  private static AuditEntry entry(Production made, Run run, Order order, Instant now) {
    String what =
        "%d samples (%d readings), taken from %s to %s: %s"
            .formatted(run.samples(), run.readings(), run.from(), run.to(), order.reason);
    return new AuditEntry(now, order.by, "thin", made.line() + ", " + made.structure(), what);
  }
}
