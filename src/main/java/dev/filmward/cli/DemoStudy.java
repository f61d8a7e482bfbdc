package dev.filmward.cli;

import dev.filmward.film.Structure;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.StudyDesk;
import dev.filmward.pipeline.StudyDesk.Given;
import dev.filmward.pipeline.StudyDesk.Sender;
import dev.filmward.store.StoredStudy;
import dev.filmward.store.StoredStudy.End;
import dev.filmward.store.StoredStudy.Ending;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Two invented gauge studies of the demonstration: one of the lidding film that is finished, whose
 * thin layers come out badly while the skins come out well, and one that has just begun. The same
 * numbers each time.
 */
final class DemoStudy {
  private static final String FILM = "LID-60";
  private static final List<String> OPERATORS = List.of("Kim", "Alex", "Sam");
  private static final int SPOTS = 10;
  private static final long SEED = 1926;

  private static final double SHARE_OF_SPOTS = 0.035;
  private static final double REPEATS_UM = 0.07;
  private static final double BARRIER_REPEATS_UM = 0.12;
  private static final double OPERATORS_UM = 0.05;
  private static final double SPOT_AND_OPERATOR_UM = 0.03;
  private static final int STEPS_BEGUN = 4;
  private static final double SMALLEST_UM = 0.01;

  private final Plant plant;
  private final StudyDesk desk;
  private final Random random = new Random(SEED);
  private final Map<String, Double> drawn = new HashMap<>();

  DemoStudy(Plant plant) {
    this.plant = plant;
    this.desk = new StudyDesk(plant);
  }

  /** Does nothing where the film is not known, or there is a study already. */
  void load() {
    Optional<Structure> film = plant.structures().find(FILM);
    if (film.isEmpty() || !desk.newest(1).isEmpty()) {
      return;
    }
    StoredStudy done = desk.plan(plan(film.get(), "new probe, before its first order", 2), "Alex");
    enter(done, done.plan().steps());
    desk.end(
        done.id(),
        new Ending(
            End.FINISHED,
            "Sam",
            plant.clock().instant(),
            "charts of skins and seal stand; of tie and barrier take the mean of four couplings"));
    StoredStudy begun = desk.plan(plan(film.get(), "four couplings averaged", 3), "Alex");
    enter(begun, STEPS_BEGUN);
  }

  private static StudyPlan plan(Structure film, String purpose, int trials) {
    return new StudyPlan(
        "Gauge 2, probe B",
        film.code(),
        purpose,
        StudyDesk.layersOf(film),
        film.total(),
        IntStream.rangeClosed(1, SPOTS).mapToObj(spot -> "S" + spot).toList(),
        OPERATORS,
        trials,
        SEED);
  }

  private void enter(StoredStudy study, int steps) {
    List<Given> given = new ArrayList<>();
    for (StudyStep step : StudyStep.inOrder(study.plan()).subList(0, steps)) {
      for (PlannedLayer layer : study.plan().layers()) {
        given.add(new Given(step, layer.name(), um(step, layer)));
      }
    }
    desk.enter(study.id(), given, new Sender("Alex", ""));
  }

  private double um(StudyStep step, PlannedLayer layer) {
    double target = target(layer);
    boolean isBarrier = layer.name().equals("Barrier");
    String name = layer.name();
    double value =
        target
            + effect(name + step.part(), target * SHARE_OF_SPOTS)
            + effect(name + step.operator(), OPERATORS_UM)
            + effect(name + step.part() + step.operator(), SPOT_AND_OPERATOR_UM)
            + (isBarrier ? BARRIER_REPEATS_UM : REPEATS_UM) * random.nextGaussian();
    return Math.max(SMALLEST_UM, Math.round(value * 100) / 100.0);
  }

  private double target(PlannedLayer layer) {
    return plant
        .structures()
        .find(FILM)
        .flatMap(film -> film.layerNamed(layer.name()))
        .map(reported -> reported.individual().target().orElse(1))
        .orElse(1.0);
  }

  /** The same for a name whenever it is asked for. */
  private double effect(String name, double sigmaUm) {
    return sigmaUm * drawn.computeIfAbsent(name, any -> random.nextGaussian());
  }
}
