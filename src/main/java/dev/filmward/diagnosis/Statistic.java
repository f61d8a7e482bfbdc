package dev.filmward.diagnosis;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The fixed vocabulary that signatures are written in: numbers that are computed from a film's
 * history. Each has one value for the whole history, or none where there is nothing to compute it
 * from: a facet that does not stand out of the noise has no numbers but its first.
 *
 * <p>Relative deviations are {@code t / t_usual - 1}; by the mass balance {@code t = Q / (rho W v)}
 * they are the same in all layers that one cause moves. "Explained" is the part, from 0 to 1, of a
 * change in all layers, weighed by how sure each is, that one pattern over the layers accounts for.
 * Sources: common practice of mass balances for coextrusion, no source, where none is named.
 */
public enum Statistic {
  LEVEL_Z(Facet.LEVEL, "z", "how far the clearest change of a mean stands out of the noise"),
  SAMPLES_SINCE(Facet.LEVEL, "samples", "how many samples there are since the change"),
  LAYERS_MOVED(Facet.LEVEL, "part", "part of the layers whose mean has moved by itself clearly"),
  COMMON_EXPLAINED(Facet.LEVEL, "part", "explained by all layers moving by the same percentage"),
  ONE_LAYER_EXPLAINED(Facet.LEVEL, "part", "explained by one layer alone"),
  EXTRUDER_EXPLAINED(
      Facet.LEVEL, "part", "explained by all layers of one extruder that feeds several"),
  ONE_SOURCE_EXPLAINED(
      Facet.LEVEL, "part", "explained by what one extruder feeds, be it one layer or several"),
  ONE_RESIN_EXPLAINED(
      Facet.LEVEL, "part", "explained by all layers of one resin, be it one layer or several"),
  TRADE_EXPLAINED(
      Facet.LEVEL,
      "part",
      "explained by two layers or extruders moving against each other, at the same mass or, for"
          + " neighbours, the same time of flight"),
  SKINS_OPPOSED_EXPLAINED(
      Facet.LEVEL, "part", "explained by the first and last layer trading mass, where alike"),
  FIRST_LAYER_EXPLAINED(Facet.LEVEL, "part", "explained by the first layer alone"),
  TRADE_MASS_Z(
      Facet.LEVEL, "z", "how far two trading layers are from the same mass, by their densities"),
  TRADE_TIME_OF_FLIGHT_Z(
      Facet.LEVEL, "z", "how far two trading layers are from the same time of flight"),
  TRADE_APART(Facet.LEVEL, "layers", "how many layers apart the two trading ones are; 1 touch"),
  TOTAL_FOLLOWS_Z(
      Facet.LEVEL, "z", "how far the total's change is from that of the layers that moved"),
  MASS_CHANGE_Z(Facet.LEVEL, "z", "how clearly the mass of all layers together has changed"),
  TIME_OF_FLIGHT_CHANGE_Z(
      Facet.LEVEL, "z", "how clearly the time of flight through all layers has changed"),
  MOVED_PERCENT(Facet.LEVEL, "%", "how far the layers that moved are off by now, with sign"),
  TOTAL_PERCENT(Facet.LEVEL, "%", "how far the total is off by now, with sign"),
  CORE_MOVED(Facet.LEVEL, "0 or 1", "whether the layer that moved is a core layer"),
  STEP_RATHER_THAN_DRIFT(
      Facet.LEVEL, "", "logarithm of the likelihood of a step over that of a drift"),
  LEVELS_OFF(
      Facet.LEVEL, "", "logarithm of the likelihood of a drift that ends over one that goes on"),
  STEP_BACK_AT_SCREEN_Z(
      Facet.LEVEL, "z", "how clearly the mean came back when the screen was changed"),
  TO_ROLL(Facet.LEVEL, "samples", "distance of the change from a new roll"),
  TO_SHIFT(Facet.LEVEL, "samples", "distance of the change from a new shift"),
  TO_RESIN_LOT(Facet.LEVEL, "samples", "distance of the change from a new resin lot"),
  TO_SCREEN_CHANGE(Facet.LEVEL, "samples", "distance of the change from a screen change"),
  TO_CALIBRATION(Facet.LEVEL, "samples", "distance of the change from a calibration"),
  TO_RESTART(Facet.LEVEL, "samples", "distance of the change from a start of the line"),

  SHORT_Z(Facet.SHORT, "z", "how far the clearest short disturbance stands out of the noise"),
  SHORT_SAMPLES(Facet.SHORT, "samples", "how long the disturbance lasted"),
  SHORT_PERCENT(Facet.SHORT, "%", "how far the layer was off then, with sign"),
  SHORT_LAYERS(Facet.SHORT, "part", "part of the layers that were off then"),
  SHORT_RECOVERED(Facet.SHORT, "samples", "how many samples have been as usual since then"),

  PERIODIC_FALSE_ALARM(
      Facet.PERIODIC,
      "probability",
      "of so high a peak in the Lomb-Scargle periodogram of any layer if there were none"),
  PERIOD_MINUTES(Facet.PERIODIC, "min", "period of the highest peak"),
  PERIODIC_LAYERS(Facet.PERIODIC, "part", "part of the layers that swing at this period"),
  PERIODIC_PERCENT(Facet.PERIODIC, "%", "how far the layer swings either way"),

  DAILY_Z(Facet.DAILY, "z", "how far a wave of 24 hours stands out of the noise"),
  DAILY_LAYERS(Facet.DAILY, "part", "part of the layers that swing in step"),
  DAILY_MATERIAL_EXPLAINED(
      Facet.DAILY, "part", "explained by sound velocities of the materials changing with heat"),

  LANES_Z(Facet.LANES, "z", "how clearly a profile across the web has changed"),
  LANES_COMMON_EXPLAINED(
      Facet.LANES, "part", "explained by all layers having the same change of profile"),
  LANES_ONE_LAYER_EXPLAINED(
      Facet.LANES, "part", "explained by the profile of one layer, others filling up or not"),
  LANES_TOTAL_Z(Facet.LANES, "z", "how clearly the profile of the total has changed"),
  LANES_ALIKE(Facet.LANES, "", "correlation of the changed profiles over the layers"),
  CURVATURE_OPPOSED_Z(
      Facet.LANES, "z", "how clearly two neighbours curve between edge and centre, opposed"),
  CURVATURE_EXPLAINED(
      Facet.LANES, "part", "explained by two neighbours trading between edge and centre"),

  SCATTER_Z(Facet.SCATTER, "z", "how clearly a layer scatters more within samples than before"),
  SCATTER_RATIO(Facet.SCATTER, "", "scatter within samples, as a ratio to before"),
  SCATTER_LAYERS(Facet.SCATTER, "part", "part of the layers that scatter more"),
  SCATTER_POSITION(Facet.SCATTER, "", "position of the layer that scatters more; 1 is outermost"),
  SCATTER_TRADE(Facet.SCATTER, "", "correlation of the added scatter of two neighbours, with sign"),
  SCATTER_TRADE_TIME_OF_FLIGHT(
      Facet.SCATTER, "part", "of the added scatter that is left in the neighbours' time of flight"),
  SCATTER_SKEW(Facet.SCATTER, "", "skewness of the readings of the layer that scatters more"),

  MISSING_SHARE(Facet.READINGS, "part", "of the readings missing in the latest samples"),
  MISSING_Z(Facet.READINGS, "z", "how clearly more readings are missing than before"),
  SAME_IN_A_ROW(Facet.READINGS, "samples", "longest run of samples that read exactly the same"),
  UPSIDE_DOWN(
      Facet.READINGS, "", "squared distance from the usual film less that from it upside down"),
  FLAGGED(Facet.READINGS, "part", "of the latest samples taken for misread by screening"),
  FLAGGED_MISSED_BOUNDARY(Facet.READINGS, "part", "flagged: a boundary not found"),
  FLAGGED_MISPLACED_BOUNDARY(Facet.READINGS, "part", "flagged: a boundary misplaced"),
  FLAGGED_RANGE_END(Facet.READINGS, "part", "flagged: pinned at the end of the gauge's range"),
  FLAGGED_LOST_ECHO(Facet.READINGS, "part", "flagged: echo lost"),
  FLAGGED_COUPLANT(Facet.READINGS, "part", "flagged: couplant counted as film");

  private final Facet facet;
  private final String unit;
  private final String meaning;

  Statistic(Facet facet, String unit, String meaning) {
    this.facet = facet;
    this.unit = unit;
    this.meaning = meaning;
  }

  /** What it looks at. */
  public Facet facet() {
    return facet;
  }

  /** May be empty. */
  public String unit() {
    return unit;
  }

  public String meaning() {
    return meaning;
  }

  /** As written in signatures. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The statistic of that word. */
  public static Optional<Statistic> find(String word) {
    return Arrays.stream(values()).filter(statistic -> statistic.word().equals(word)).findFirst();
  }
}
