package dev.filmward.pipeline;

import dev.filmward.film.Layer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.CalibrationDoubts;
import dev.filmward.gauge.calibration.CalibrationFit;
import dev.filmward.gauge.calibration.FittedVelocity;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.calibration.Velocity;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.GaugeTable;
import dev.filmward.store.Tables;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The plant's gauges: which there are, which lines they measure, what they are set to, and their
 * calibrations. Everything is added and nothing changed. Thread-safe; each change is one
 * transaction.
 */
public final class GaugeDesk {
  private final Plant plant;
  private final RescalingDesk rescaling;
  private final Consumer<PlantEvent> listener;

  GaugeDesk(Plant plant, RescalingDesk rescaling, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.rescaling = rescaling;
    this.listener = listener;
  }

  /** What a person measured. */
  public record Measured(
      Subject subject,
      Velocity before,
      List<PieceReadings> pieces,
      Optional<TemperatureModel> temperature) {
    public Measured {
      pieces = List.copyOf(pieces);
    }
  }

  /** Gauges by name. */
  public List<GaugeTable.Kept> gauges() {
    return plant.store().read(tables -> tables.gauges().all());
  }

  public List<GaugeUse> uses() {
    return plant.store().read(tables -> tables.gauges().uses());
  }

  public List<GaugeSetting> settings(String line, String structure) {
    return plant.store().read(tables -> tables.gauges().settings(line, structure));
  }

  /** Adds a gauge, or says anew what is on its label. */
  public void keep(Gauge gauge, Word word) {
    plant
        .store()
        .change(
            tables -> {
              tables.gauges().add(gauge, word);
              String what =
                  String.format(
                      Locale.ROOT,
                      "%.6g MHz, bandwidth %.6g: ",
                      gauge.centreMhz(),
                      gauge.bandwidth());
              tables.audit().add(entry("gauge", gauge.name(), what, word));
            });
  }

  /**
   * Says which gauge measures a line from a moment on.
   *
   * @throws NoSuchElementException if there is no such gauge, or nothing has come from the line
   */
  public void use(GaugeUse use) {
    plant
        .store()
        .change(
            tables -> {
              requireGauge(tables, use.gauge());
              LineDesk.requireLine(tables, use.line());
              tables.gauges().use(use);
              String what = "measures " + use.line() + " since " + use.holdsFrom() + ": ";
              tables.audit().add(entry("gauge", use.gauge(), what, use.word()));
            });
  }

  /**
   * Notes what the gauge of a line is set to for a layer from a moment on. Where its readings are
   * re-scaled, those from then on are re-scaled from the new velocity.
   *
   * @throws NoSuchElementException if there is no such structure or layer, or nothing has come from
   *     the line
   */
  public void set(GaugeSetting setting) {
    Structure structure = structure(setting.structure());
    requireLayer(structure, setting.layer());
    Production production = new Production(setting.line(), structure);
    List<Runnable> afterwards =
        plant
            .store()
            .write(
                tables -> {
                  LineDesk.requireLine(tables, setting.line());
                  tables.gauges().set(setting);
                  tables
                      .audit()
                      .add(entry("gauge", subject(setting), words(setting), setting.word()));
                  return rescaling.follow(tables, production, setting.holdsFrom(), setting.word());
                });
    afterwards.forEach(Runnable::run);
    listener.accept(new PlantEvent.LimitsFrozen(setting.line(), setting.structure()));
  }

  /**
   * Works a calibration out; nothing is kept.
   *
   * @throws IllegalArgumentException if the readings lead to no velocity
   */
  public Calibration workOut(Measured measured, Word word) {
    FittedVelocity found = CalibrationFit.of(measured.pieces, measured.before);
    List<String> doubts = CalibrationDoubts.of(found, measured.pieces, measured.subject.resin());
    return new Calibration(
        0,
        measured.subject,
        measured.before,
        found,
        measured.pieces,
        measured.temperature,
        doubts,
        word);
  }

  /**
   * Keeps the record of a calibration; readings stay as they are until it is applied.
   *
   * @throws NoSuchElementException if there is no such gauge, structure or layer
   */
  public Calibration keep(Measured measured, Word word) {
    Subject subject = measured.subject;
    if (!subject.structure().isEmpty()) {
      requireLayer(structure(subject.structure()), subject.layer());
    }
    Calibration worked = workOut(measured, word);
    return plant
        .store()
        .write(
            tables -> {
              requireGauge(tables, subject.gauge());
              Calibration kept = tables.calibrations().add(worked);
              tables.audit().add(entry("calibrate", subject(kept), words(kept), word));
              return kept;
            });
  }

  public List<Calibration> calibrations(int most) {
    return plant.store().read(tables -> tables.calibrations().newest(most));
  }

  private static String subject(GaugeSetting setting) {
    return setting.line() + ", " + setting.structure() + ", " + setting.layer();
  }

  private static String words(GaugeSetting setting) {
    return String.format(
        Locale.ROOT,
        "set to %.6g m/s and %.6g ns since %s: ",
        setting.velocity().mps(),
        setting.velocity().offsetNs(),
        setting.holdsFrom());
  }

  private static String subject(Calibration kept) {
    Subject subject = kept.subject();
    String what = subject.structure().isEmpty() ? subject.resin() : subject.layer();
    return "calibration " + kept.id() + ", " + subject.gauge() + ", " + what;
  }

  private static String words(Calibration kept) {
    return String.format(
        Locale.ROOT,
        "%.6g m/s and %.6g ns, before %.6g m/s and %.6g ns: ",
        kept.found().velocity().mps(),
        kept.found().velocity().offsetNs(),
        kept.before().mps(),
        kept.before().offsetNs());
  }

  private static AuditEntry entry(String action, String subject, String what, Word word) {
    return new AuditEntry(word.at(), word.by(), action, subject, what + word.reason());
  }

  static void requireGauge(Tables tables, String name) {
    if (tables.gauges().all().stream().noneMatch(kept -> kept.gauge().name().equals(name))) {
      throw new NoSuchElementException("no gauge \"" + name + "\"; add it first");
    }
  }

  private Structure structure(String code) {
    return plant
        .structures()
        .find(code)
        .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
  }

  private static void requireLayer(Structure structure, String name) {
    boolean isKnown =
        structure.layerNamed(name).isPresent()
            || structure.layers().stream().map(Layer::name).anyMatch(name::equals);
    if (!isKnown) {
      throw new NoSuchElementException("no layer \"" + name + "\" in " + structure.code());
    }
  }
}
