package dev.filmward.pipeline;

import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.conformity.DecisionRule;
import dev.filmward.gauge.conformity.GuardedLimits;
import dev.filmward.gauge.echo.EchoCheck;
import dev.filmward.gauge.echo.EchoPlan;
import dev.filmward.gauge.echo.GaugedLayer;
import dev.filmward.gauge.echo.Setup;
import dev.filmward.gauge.uncertainty.Budget;
import dev.filmward.gauge.uncertainty.Coverage;
import dev.filmward.gauge.uncertainty.FilmBudget;
import dev.filmward.gauge.uncertainty.LayerBudget;
import dev.filmward.gauge.uncertainty.LayerModel;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;

/** Checks a gauge against a film that is known, and what its readings are worth. Thread-safe. */
public final class FilmCheck {
  private static final int SAMPLES = 200;

  /** So many of the newest calibrations are looked through. */
  private static final int CALIBRATIONS = 200;

  private static final double PERCENT = 100;

  private final Plant plant;

  public FilmCheck(Plant plant) {
    this.plant = plant;
  }

  /**
   * What the budget is worked out with.
   *
   * @param velocityPercent standard uncertainty of each layer's velocity, where it is known
   * @param rule how it counts against the specification
   * @param line whose last samples are looked at; empty for none
   */
  public record Asked(
      LayerModel.Conditions conditions,
      Coverage coverage,
      List<OptionalDouble> velocityPercent,
      DecisionRule rule,
      Optional<String> line) {}

  /**
   * What a layer's readings are worth.
   *
   * @param limits with guard bands; empty without limits or a budget
   * @param beside what the last samples of a line show; empty where there are none
   */
  public record Worth(
      LayerBudget budget, Optional<GuardedLimits> limits, Optional<GaugeBesideChart> beside) {}

  /** The structure of that code, or the first one that is known where none is asked for. */
  public Structure structure(Optional<String> code) {
    return code.map(plant.structures()::find)
        .orElseGet(() -> plant.structures().all().stream().findFirst())
        .orElseThrow(
            () ->
                new NoSuchElementException(
                    code.map(asked -> "no structure \"" + asked + "\"")
                        .orElse("no structure is known yet; bring a structures file")));
  }

  public EchoPlan check(Structure structure, Setup setup) {
    return EchoCheck.of(structure, setup);
  }

  /** Layer by layer, outer first. */
  public List<Worth> worth(Structure structure, Asked asked) {
    List<Worth> worth = new ArrayList<>();
    FilmBudget film = new FilmBudget(asked.conditions(), asked.coverage());
    for (LayerBudget budget :
        film.of(GaugedLayer.of(structure), velocityPercent(structure, asked))) {
      Optional<GuardedLimits> limits =
          budget.budget().flatMap(parts -> guarded(budget, parts, asked));
      worth.add(new Worth(budget, limits, beside(structure, budget, limits, asked)));
    }
    return worth;
  }

  /** What was given, else what the newest calibration of a layer says. */
  private List<OptionalDouble> velocityPercent(Structure structure, Asked asked) {
    List<OptionalDouble> given = asked.velocityPercent();
    List<Calibration> newest =
        plant.store().read(tables -> tables.calibrations().newest(CALIBRATIONS));
    List<OptionalDouble> percent = new ArrayList<>();
    for (int i = 0; i < Math.max(given.size(), structure.reported().size()); i++) {
      boolean isGiven = i < given.size() && given.get(i).isPresent();
      percent.add(isGiven ? given.get(i) : calibrated(newest, structure, i + 1));
    }
    return percent;
  }

  private static OptionalDouble calibrated(
      List<Calibration> newestFirst, Structure structure, int position) {
    if (position > structure.reported().size()) {
      return OptionalDouble.empty();
    }
    String layer = structure.reported().get(position - 1).name();
    return newestFirst.stream()
        .filter(one -> one.subject().structure().equals(structure.code()))
        .filter(one -> one.subject().layer().equals(layer))
        .mapToDouble(one -> PERCENT * one.found().relative())
        .findFirst();
  }

  private static Optional<GuardedLimits> guarded(LayerBudget budget, Budget parts, Asked asked) {
    SpecLimits spec = budget.layer().layer().individual();
    return spec.lower().isEmpty() && spec.upper().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new GuardedLimits(spec, asked.rule().guard(parts.combined(), parts.expanded())));
  }

  private Optional<GaugeBesideChart> beside(
      Structure structure, LayerBudget budget, Optional<GuardedLimits> limits, Asked asked) {
    if (asked.line().isEmpty() || budget.budget().isEmpty()) {
      return Optional.empty();
    }
    GaugeBesideChart.Gauged gauge =
        new GaugeBesideChart.Gauged(
            budget.repeatabilityUm(asked.conditions()).orElseThrow(),
            budget.budget().get().combined(),
            limits);
    Series series =
        new Series(asked.line().get(), structure.code(), budget.layer().layer().position());
    return GaugeBesideChart.of(lastOf(series), gauge);
  }

  private List<Subgroup> lastOf(Series series) {
    return plant.store().read(tables -> tables.figures().last(series, SAMPLES)).stream()
        .map(FigureRow::subgroup)
        .flatMap(Optional::stream)
        .toList();
  }
}
