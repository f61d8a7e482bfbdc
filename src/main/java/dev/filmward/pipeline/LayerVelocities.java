package dev.filmward.pipeline;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.EffectiveVelocity;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.Scale;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Velocity;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * At which velocity a gauge exported the readings of a reported layer, and which one a calibration
 * gives it. What the gauge was set to counts where it was recorded, else what the calibration says
 * was set before. A calibration of one of several layers that are reported together moves their
 * effective velocity. For one thread.
 */
final class LayerVelocities {
  private final ReportedLayer reported;
  private final List<GaugeSetting> settings;

  LayerVelocities(ReportedLayer reported, List<GaugeSetting> settings) {
    this.reported = reported;
    this.settings = List.copyOf(settings);
  }

  /** Whether a calibration is of this layer, of one in it, or of a resin of one in it. */
  boolean isAbout(Calibration calibration) {
    return calibrated(calibration).isPresent();
  }

  /** The steps by which readings from a moment on get the velocity of a calibration. */
  List<ScaleStep> steps(Calibration calibration, Instant from) {
    List<ScaleStep> steps = new ArrayList<>();
    for (Instant moment : momentsSince(from)) {
      steps.add(step(calibration, moment));
    }
    return steps;
  }

  /** The moment itself, and those after it at which the gauge was set to something else. */
  NavigableSet<Instant> momentsSince(Instant from) {
    NavigableSet<Instant> moments = new TreeSet<>();
    moments.add(from);
    settings.stream()
        .filter(setting -> isOurs(setting.layer()) && setting.holdsFrom().isAfter(from))
        .forEach(setting -> moments.add(setting.holdsFrom()));
    return moments;
  }

  ScaleStep step(Calibration calibration, Instant moment) {
    Velocity before = before(calibration, moment);
    Velocity after = after(calibration, moment);
    Scale whole = Scale.between(before, after);
    Scale scale = reported.position() == 1 ? whole : new Scale(whole.factor(), 0);
    return new ScaleStep(moment, scale, after.mps());
  }

  /** What is set for a name at a moment, where that was recorded. */
  Optional<GaugeSetting> setting(String layer, Instant moment) {
    Optional<GaugeSetting> held = Optional.empty();
    for (GaugeSetting setting : settings) {
      boolean holds = setting.layer().equals(layer) && !setting.holdsFrom().isAfter(moment);
      boolean isLater =
          held.map(known -> !setting.holdsFrom().isBefore(known.holdsFrom())).orElse(true);
      held = holds && isLater ? Optional.of(setting) : held;
    }
    return held;
  }

  private Velocity before(Calibration calibration, Instant moment) {
    if (isWhole(calibration)) {
      return setting(reported.name(), moment)
          .map(GaugeSetting::velocity)
          .orElse(calibration.before());
    }
    Layer member = calibrated(calibration).orElseThrow();
    Velocity own =
        setting(member.name(), moment).map(GaugeSetting::velocity).orElse(calibration.before());
    return effective(member, own, moment);
  }

  private Velocity after(Calibration calibration, Instant moment) {
    Velocity found = calibration.found().velocity();
    return isWhole(calibration)
        ? found
        : effective(calibrated(calibration).orElseThrow(), found, moment);
  }

  /** Whether a calibration is of all that is reported together here. */
  boolean isWhole(Calibration calibration) {
    return reported.members().size() == 1 || calibration.subject().layer().equals(reported.name());
  }

  /** The layer that a calibration is of; the first one where it is of the whole reported layer. */
  private Optional<Layer> calibrated(Calibration calibration) {
    String layer = calibration.subject().layer();
    String resin = calibration.subject().resin();
    if (layer.equals(reported.name())) {
      return Optional.of(reported.members().get(0));
    }
    return reported.members().stream()
        .filter(
            member ->
                layer.isEmpty()
                    ? member.resin().map(resin::equals).orElse(false)
                    : member.name().equals(layer))
        .findFirst();
  }

  private Velocity effective(Layer calibrated, Velocity own, Instant moment) {
    EffectiveVelocity sum = new EffectiveVelocity();
    for (Layer member : reported.members()) {
      double um = target(member);
      sum.add(um, member.equals(calibrated) ? own.mps() : mps(member, moment));
    }
    return new Velocity(sum.mps(), own.offsetNs());
  }

  private double target(Layer member) {
    OptionalDouble target = member.individual().target();
    if (target.isEmpty()) {
      throw new IllegalStateException(
          "\""
              + member.name()
              + "\" is reported together with others and has no target; without it their"
              + " effective velocity cannot be worked out. Calibrate \""
              + reported.name()
              + "\" as one.");
    }
    return target.getAsDouble();
  }

  private double mps(Layer member, Instant moment) {
    return setting(member.name(), moment)
        .map(setting -> setting.velocity().mps())
        .orElseGet(
            () ->
                member
                    .velocityMps()
                    .orElseThrow(
                        () ->
                            new IllegalStateException(
                                "no velocity is known of \""
                                    + member.name()
                                    + "\", which is reported together with others; set it, or"
                                    + " calibrate \""
                                    + reported.name()
                                    + "\" as one")));
  }

  private boolean isOurs(String layer) {
    return layer.equals(reported.name())
        || reported.members().stream().anyMatch(member -> member.name().equals(layer));
  }
}
