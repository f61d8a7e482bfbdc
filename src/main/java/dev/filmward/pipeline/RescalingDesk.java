package dev.filmward.pipeline;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.pipeline.Rescaling.Temperature;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Where readings are given another velocity from a moment on, and where that is taken back. The
 * readings as exported stay; figures, signals and alarms follow in the same transaction.
 * Thread-safe.
 */
public final class RescalingDesk {
  private final Plant plant;
  private final Judging judging;
  private final Consumer<PlantEvent> listener;

  RescalingDesk(Plant plant, Judging judging, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.judging = judging;
    this.listener = listener;
  }

  /** What was done: a version, and how much it changed. */
  public record Done(int version, Instant from, long samples, long left, int limitsCarried) {}

  /** How the readings of what a line makes of a structure are re-scaled. */
  public FilmScalings of(String line, String structure) {
    return plant.store().read(tables -> tables.scalings().of(line, structure));
  }

  /**
   * Says what a re-scaling would do. It is done and undone again, so that imports wait for it.
   *
   * @throws NoSuchElementException if there is no such line, structure, layer or calibration
   * @throws IllegalStateException if no factor can be worked out
   */
  public RescalingPreview preview(Rescaling order) {
    return rehearse(order);
  }

  /**
   * Re-scales.
   *
   * @throws NoSuchElementException if there is no such line, structure, layer or calibration
   * @throws IllegalStateException if no factor can be worked out
   */
  public Done apply(Rescaling order) {
    Production production = production(order.line(), order.structure());
    return change(
        production,
        tables -> {
          RescalingWork work = new RescalingWork(tables, production, order.position());
          Scaling scaling = scaling(tables, production, order, work.known().next());
          return judged(tables, production, scaling, work.keep(scaling, order.limits()));
        });
  }

  /**
   * Takes a re-scaling back, by a version of its own.
   *
   * @throws NoSuchElementException if there is no such version
   * @throws IllegalStateException if it was taken back before, or takes another one back
   */
  public Done takeBack(Series layer, int version, LimitsToo limits, Word word) {
    Production production = production(layer.line(), layer.structure());
    return change(
        production,
        tables -> {
          RescalingWork work = new RescalingWork(tables, production, layer.position());
          LayerScalings known = work.known();
          checkStands(known, version);
          Scaling back = Scaling.back(known.next(), version, word);
          return judged(tables, production, back, work.keep(back, limits));
        });
  }

  /**
   * What follows from other settings of the gauge of a line since a moment: readings that it
   * exported from then on are re-scaled from the velocity set then. In the transaction that notes
   * the settings.
   *
   * @return tells what happened; to be run after the commit
   */
  List<Runnable> follow(Tables tables, Production production, Instant since, Word word) {
    List<Runnable> afterwards = new ArrayList<>();
    for (ReportedLayer layer : production.structure().reported()) {
      RescalingWork work = new RescalingWork(tables, production, layer.position());
      following(tables, production, layer, since, word)
          .map(scaling -> judged(tables, production, scaling, work.keep(scaling, LimitsToo.FLAG)))
          .map(Judged::afterwards)
          .ifPresent(afterwards::add);
    }
    return afterwards;
  }

  private static Optional<Scaling> following(
      Tables tables, Production production, ReportedLayer layer, Instant since, Word word) {
    LayerScalings known =
        tables.scalings().of(production.line(), production.structure().code()).of(layer.position());
    LayerVelocities velocities = velocities(tables, production, layer);
    NavigableSet<Instant> moments = velocities.momentsSince(since);
    known.versions().stream()
        .flatMap(version -> version.steps().stream())
        .map(ScaleStep::holdsFrom)
        .filter(since::isBefore)
        .forEach(moments::add);
    List<ScaleStep> steps = new ArrayList<>();
    OptionalLong calibration = OptionalLong.empty();
    for (Instant moment : moments) {
      OptionalLong behind =
          known.inForceAt(moment).map(Scaling::calibrationId).orElse(OptionalLong.empty());
      if (behind.isPresent()) {
        calibration = calibration.isPresent() ? calibration : behind;
        Optional<TemperatureModel> model = known.stepAt(moment).flatMap(ScaleStep::temperature);
        steps.add(velocities.step(calibration(tables, behind.getAsLong()), moment).with(model));
      }
    }
    boolean isNew =
        steps.stream().anyMatch(step -> !known.at(step.holdsFrom()).equals(step.scale()));
    return isNew
        ? Optional.of(new Scaling(known.next(), steps, 0, calibration, word))
        : Optional.empty();
  }

  private static void checkStands(LayerScalings known, int version) {
    if (version < 1 || version > known.versions().size()) {
      throw new NoSuchElementException("no re-scaling " + version + " of this layer");
    }
    if (known.versions().get(version - 1).isBack()) {
      throw new IllegalStateException(
          "version " + version + " takes another one back; re-scale anew instead");
    }
    if (known.takenBack().contains(version)) {
      throw new IllegalStateException("version " + version + " was taken back before");
    }
  }

  private static Scaling scaling(
      Tables tables, Production production, Rescaling order, int version) {
    ReportedLayer layer = layer(production.structure(), order.position());
    Calibration calibration = calibration(tables, order.calibrationId());
    LayerVelocities velocities = velocities(tables, production, layer);
    String structure = calibration.subject().structure();
    boolean isOfOther = !structure.isEmpty() && !structure.equals(order.structure());
    if (isOfOther || !velocities.isAbout(calibration)) {
      throw new IllegalArgumentException(
          "calibration " + calibration.id() + " is not of layer \"" + layer.name() + "\"");
    }
    return new Scaling(
        version,
        velocities.steps(calibration, order.from()).stream()
            .map(step -> step.with(temperature(velocities, calibration, order)))
            .toList(),
        0,
        OptionalLong.of(calibration.id()),
        order.word());
  }

  private static Optional<TemperatureModel> temperature(
      LayerVelocities velocities, Calibration calibration, Rescaling order) {
    if (order.temperature() == Temperature.LEFT_OUT) {
      return Optional.empty();
    }
    if (calibration.temperature().isEmpty()) {
      throw new IllegalArgumentException(
          "calibration "
              + calibration.id()
              + " does not say at which temperature it was made and what the velocity does with it;"
              + " calibrate anew and give both, or leave temperatures out");
    }
    if (!velocities.isWhole(calibration)) {
      throw new IllegalArgumentException(
          "the layers that are reported together have one velocity by one temperature only where"
              + " they were calibrated as one; calibrate them as one, or leave temperatures out");
    }
    return calibration.temperature();
  }

  private static LayerVelocities velocities(
      Tables tables, Production production, ReportedLayer layer) {
    return new LayerVelocities(
        layer, tables.gauges().settings(production.line(), production.structure().code()));
  }

  private record Judged(Done done, Runnable afterwards) {}

  private Judged judged(
      Tables tables, Production production, Scaling scaling, RescalingWork.Done work) {
    Runnable afterwards =
        judging.begin(tables).judgeAgain(production.line(), production.structure(), work.from());
    return new Judged(
        new Done(scaling.version(), work.from(), work.samples(), work.left(), work.carried()),
        afterwards);
  }

  private Done change(Production production, Function<Tables, Judged> work) {
    Judged judged = plant.store().write(work);
    judged.afterwards.run();
    listener.accept(new PlantEvent.LimitsFrozen(production.line(), production.structure().code()));
    return judged.done;
  }

  /** Carries a preview out of a transaction that is undone by it. */
  private static final class Undone extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient RescalingPreview preview;

    private Undone(RescalingPreview preview) {
      super("a rehearsal is undone", null, false, false);
      this.preview = preview;
    }
  }

  private RescalingPreview rehearse(Rescaling order) {
    Production production = production(order.line(), order.structure());
    try {
      return plant
          .store()
          .write(
              tables -> {
                RescalingWork work = new RescalingWork(tables, production, order.position());
                Scaling scaling = scaling(tables, production, order, work.known().next());
                throw new Undone(new RescalingRehearsal(tables, production, order, scaling).run());
              });
    } catch (Undone undone) {
      return undone.preview;
    }
  }

  private static Calibration calibration(Tables tables, long id) {
    return tables
        .calibrations()
        .find(id)
        .orElseThrow(() -> new NoSuchElementException("no calibration " + id));
  }

  private static ReportedLayer layer(Structure structure, int position) {
    if (position < 1 || position > structure.reported().size()) {
      throw new NoSuchElementException("no layer " + position + " in " + structure.code());
    }
    return structure.reported().get(position - 1);
  }

  private Production production(String line, String code) {
    Structure structure =
        plant
            .structures()
            .find(code)
            .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
    plant
        .store()
        .read(
            tables -> {
              LineDesk.requireLine(tables, line);
              return line;
            });
    return new Production(line, structure);
  }
}
