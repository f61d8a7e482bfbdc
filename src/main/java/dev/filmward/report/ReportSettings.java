package dev.filmward.report;

import dev.filmward.capability.LineOutput;
import dev.filmward.capability.Production;
import dev.filmward.capability.ResinPrice;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a plant decided about its weekly report. Immutable.
 *
 * @param prices of films; one without a line holds for all lines, one without a structure for all
 *     films
 */
public record ReportSettings(Asked asked, List<FilmPrice> prices, Schedule schedule) {
  public static final ReportSettings USUAL =
      new ReportSettings(Asked.USUAL, List.of(), Schedule.OFF);

  public ReportSettings {
    prices = List.copyOf(prices);
  }

  /**
   * What a film's resin costs and how much is made.
   *
   * @param layer name of the reported layer; empty for a price of the whole film
   * @param kgPerHour of the whole film; or, where that is empty, width in m and speed in m/min
   * @param hoursPerWeek in which good film is made
   */
  public record FilmPrice(
      String line,
      String structure,
      String layer,
      double perKg,
      String currency,
      LocalDate asOf,
      OptionalDouble kgPerHour,
      OptionalDouble widthM,
      OptionalDouble speedMPerMin,
      double hoursPerWeek) {
    public FilmPrice {
      new ResinPrice(perKg, currency, asOf);
      if (kgPerHour.isEmpty() && (widthM.isEmpty() || speedMPerMin.isEmpty())) {
        throw new IllegalArgumentException(
            "give the output in kg/h, or the trimmed width in m and the speed in m/min");
      }
      if (!(hoursPerWeek > 0 && hoursPerWeek <= 168)) {
        throw new IllegalArgumentException("a week has up to 168 hours, not " + hoursPerWeek);
      }
    }

    Production production(double densityGcm3) {
      LineOutput output =
          kgPerHour.isPresent()
              ? new LineOutput.Mass(kgPerHour.getAsDouble())
              : new LineOutput.Web(widthM.orElseThrow(), speedMPerMin.orElseThrow());
      return new Production(
          densityGcm3, output, hoursPerWeek, new ResinPrice(perKg, currency, asOf));
    }

    private int fit(String ofLine, String ofStructure, String ofLayer) {
      boolean fits =
          (line.isEmpty() || line.equals(ofLine))
              && (structure.isEmpty() || structure.equals(ofStructure))
              && layer.equals(ofLayer);
      return fits ? (line.isEmpty() ? 1 : 3) + (structure.isEmpty() ? 0 : 1) : 0;
    }
  }

  /** The price that says most exactly what it is for; empty where there is none. */
  Optional<FilmPrice> price(String line, String structure, String layer) {
    FilmPrice best = null;
    int bestFit = 0;
    for (FilmPrice each : prices) {
      int fit = each.fit(line, structure, layer);
      if (fit > bestFit) {
        best = each;
        bestFit = fit;
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * When reports are made by themselves, for the week that has ended; they are drafts until a
   * person signs.
   *
   * @param day 1 (Monday) to 7
   * @param hour 0 to 23 in the plant's zone
   * @param recipients addresses that get it by mail
   */
  public record Schedule(
      boolean isOn, int day, int hour, List<String> recipients, String language, String paper) {
    public static final Schedule OFF = new Schedule(false, 1, 6, List.of(), "en", "a4");

    public Schedule {
      recipients = List.copyOf(recipients);
      if (!(day >= 1 && day <= 7) || !(hour >= 0 && hour <= 23)) {
        throw new IllegalArgumentException(
            "a day from 1 (Monday) to 7 and an hour from 0 to 23, not " + day + " and " + hour);
      }
      if (!List.of("en", "de").contains(language) || !List.of("a4", "letter").contains(paper)) {
        throw new IllegalArgumentException("a language is en or de, a paper a4 or letter");
      }
      for (String address : recipients) {
        if (!address.matches("[^\\s@<>\"]+@[^\\s@<>\"]+")) {
          throw new IllegalArgumentException("\"" + address + "\" is no mail address");
        }
      }
    }
  }
}
