package dev.filmward.gauge.study;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Figures;
import java.util.Map;
import java.util.OptionalDouble;

/** Makes readings of studies for tests. */
final class Readings {
  private Readings() {}

  /** By part, operator and trial, all of layer 1. */
  static StudyReadings of(double[][][] um) {
    StudyReadings readings = new StudyReadings();
    for (int part = 0; part < um.length; part++) {
      for (int operator = 0; operator < um[part].length; operator++) {
        for (int trial = 0; trial < um[part][operator].length; trial++) {
          readings.add(
              new StudyReading(
                  "P" + part, "O" + operator, "" + trial, "1", um[part][operator][trial]));
        }
      }
    }
    return readings;
  }

  /** The same, balanced. */
  static CrossedReadings crossed(double[][][] um) {
    return ((StudyReadings.Layout.Balanced) of(um).layout("1")).readings();
  }

  /** A file beside the tests. */
  static StudyReadings file(String name) {
    StudyReadings readings = new StudyReadings();
    for (Map<String, String> row : Figures.table(Readings.class, name)) {
      readings.add(
          new StudyReading(
              row.get("part"),
              row.get("operator"),
              row.get("trial"),
              "1",
              Double.parseDouble(row.get("thickness_um"))));
    }
    return readings;
  }

  static GaugeStudy study(StudyReadings readings, SpecLimits limits) {
    return ((LayerOutcome.Studied) LayerOutcome.of(readings, layer -> limits).get(0)).study();
  }

  static GaugeStudy study(StudyReadings readings) {
    return study(readings, SpecLimits.NONE);
  }

  static String refusal(StudyReadings readings) {
    LayerOutcome outcome = LayerOutcome.of(readings, layer -> SpecLimits.NONE).get(0);
    return String.join("\n", ((LayerOutcome.Refused) outcome).reasons());
  }

  static SpecLimits from(double lower) {
    return new SpecLimits(OptionalDouble.of(lower), OptionalDouble.empty(), OptionalDouble.empty());
  }

  static SpecLimits upTo(double upper) {
    return new SpecLimits(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(upper));
  }
}
