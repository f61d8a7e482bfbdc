package dev.filmward.gauge.uncertainty;

import dev.filmward.gauge.echo.GaugedLayer;
import dev.filmward.gauge.echo.LayerSound;
import dev.filmward.gauge.echo.Resin;
import dev.filmward.gauge.uncertainty.GroupVelocity.Member;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Budgets of all reported layers of a film at what they are meant to be. The uncertainty of a
 * velocity is the one given (of a calibration), else the range of the resin's family taken as a
 * rectangle. Where the change with temperature is not known that component is left out and said so.
 * Immutable.
 */
public final class FilmBudget {
  private static final double PERCENT = 100;
  private static final String OF_CALIBRATION = "as given, or as last calibrated";
  private static final String OF_FAMILY = "range of the resin's family; calibrate";

  private final LayerModel.Conditions conditions;
  private final Coverage coverage;

  public FilmBudget(LayerModel.Conditions conditions, Coverage coverage) {
    this.conditions = conditions;
    this.coverage = coverage;
  }

  /**
   * One budget for each layer.
   *
   * @param velocityPercent standard uncertainty of each layer's velocity in percent of it, in the
   *     order of the layers; empty, or left out at the end, where the family's range is taken
   */
  public List<LayerBudget> of(List<GaugedLayer> layers, List<OptionalDouble> velocityPercent) {
    if (velocityPercent.size() > layers.size()) {
      throw new IllegalArgumentException(
          "velocity has an entry for each of "
              + layers.size()
              + " layers, not "
              + velocityPercent.size());
    }
    List<LayerBudget> budgets = new ArrayList<>();
    for (int i = 0; i < layers.size(); i++) {
      OptionalDouble given =
          i < velocityPercent.size() ? velocityPercent.get(i) : OptionalDouble.empty();
      LayerModel.Place place = i == 0 ? LayerModel.Place.FIRST : LayerModel.Place.FURTHER_IN;
      budgets.add(of(layers.get(i), given, place));
    }
    return budgets;
  }

  private LayerBudget of(GaugedLayer layer, OptionalDouble given, LayerModel.Place place) {
    String basis = given.isPresent() ? OF_CALIBRATION : OF_FAMILY;
    if (layer.flightNs().isEmpty()) {
      return missing(layer, basis, "target or velocity is not known; give them in the structure");
    }
    boolean hasFamilies = layer.members().stream().allMatch(m -> m.family().isPresent());
    if (given.isEmpty() && !hasFamilies) {
      return missing(layer, basis, "give the standard uncertainty of the velocity, as calibrated");
    }
    GroupVelocity velocity = GroupVelocity.of(members(layer));
    Uncertain doubt =
        given.isPresent()
            ? Uncertain.of(given.getAsDouble() / PERCENT * velocity.velocityMps())
            : velocity.uncertainty();
    LayerModel model =
        new LayerModel(
            layer.nominalUm().orElseThrow(),
            velocity.velocityMps(),
            doubt,
            velocity.kelvinMps(),
            place);
    return new LayerBudget(
        layer, basis, Optional.of(model.budget(conditions, coverage)), withoutTemperature(layer));
  }

  private static LayerBudget missing(GaugedLayer layer, String basis, String question) {
    return new LayerBudget(layer, basis, Optional.empty(), question);
  }

  /** A layer alone is as thick as it is reported, members of a group as each is meant to be. */
  private static List<Member> members(GaugedLayer layer) {
    if (layer.members().size() == 1) {
      return List.of(member(layer.members().get(0), layer.nominalUm().orElseThrow()));
    }
    return layer.members().stream()
        .map(sound -> member(sound, sound.nominalUm().orElseThrow()))
        .toList();
  }

  private static Member member(LayerSound sound, double thicknessUm) {
    double standard =
        sound
            .family()
            .map(Resin::velocityMps)
            .map(range -> Uncertain.between(range.low(), range.high()).standard())
            .orElse(0.0);
    return new Member(
        thicknessUm, sound.velocityMps().orElseThrow(), standard, kelvin(sound).orElse(0));
  }

  private String withoutTemperature(GaugedLayer layer) {
    boolean isKnown = layer.members().stream().allMatch(member -> kelvin(member).isPresent());
    return isKnown || conditions.temperatureK() == 0
        ? ""
        : "temperature counts for nothing here: how velocity changes with it is not known";
  }

  private static OptionalDouble kelvin(LayerSound sound) {
    return sound
        .family()
        .flatMap(Resin::kelvin)
        .map(span -> OptionalDouble.of(span.start()))
        .orElseGet(OptionalDouble::empty);
  }
}
