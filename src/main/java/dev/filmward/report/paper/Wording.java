package dev.filmward.report.paper;

import dev.filmward.film.Characteristic;
import dev.filmward.report.Bounds;
import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.Verdict;
import dev.filmward.report.WeeklyReport;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.OptionalDouble;

/** How a report's facts are called in one language. Immutable. */
final class Wording {
  static final int INDEX_DECIMALS = 2;
  private static final int MOST_DECIMALS = 5;
  private static final long SECONDS_IN_AN_HOUR = 3600;

  private final Texts texts;
  private final WeeklyReport report;
  private final ZoneId zone;

  Wording(Texts texts, WeeklyReport report) {
    this.texts = texts;
    this.report = report;
    this.zone = ZoneId.of(report.zone());
  }

  Texts texts() {
    return texts;
  }

  WeeklyReport report() {
    return report;
  }

  boolean isInternal() {
    return report.edition() == WeeklyReport.Edition.INTERNAL;
  }

  ZonedDateTime local(Instant at) {
    return at.atZone(zone);
  }

  String moment(Instant at) {
    return texts.dayAndTime(local(at));
  }

  /** First and last day of the week. */
  String period() {
    Instant last = report.to().minus(Duration.ofSeconds(1));
    return texts.say(
        "period", "from", texts.day(local(report.from())), "to", texts.day(local(last)));
  }

  String film(FilmWeek film) {
    return texts.say("film", "line", film.line(), "structure", film.structure());
  }

  /** A share without a specification is measured, and asked for nothing. */
  static boolean isAskedFor(CharacteristicWeek each) {
    return !each.isShare() || !each.individual().isEmpty();
  }

  /** What a characteristic is called; a share says that it is one. */
  String characteristic(CharacteristicWeek each) {
    if (each.kind() == Characteristic.Kind.TOTAL) {
      return texts.say("total");
    }
    return each.isShare() ? texts.say("shareOf", "name", each.name()) : each.name();
  }

  String withUnit(CharacteristicWeek each) {
    return texts.say("withUnit", "name", characteristic(each), "unit", Measure.of(each).unit());
  }

  String verdict(Verdict verdict) {
    return texts.say("verdict." + code(verdict));
  }

  String index(double value) {
    return texts.number(value, decimals(value));
  }

  String index(OptionalDouble value) {
    return value.isPresent() ? index(value.getAsDouble()) : texts.say("none");
  }

  Cell indexCell(OptionalDouble value) {
    int decimals = value.isPresent() ? decimals(value.getAsDouble()) : INDEX_DECIMALS;
    return Cell.number(value, decimals, texts);
  }

  /**
   * Two, or as many as tell an index below the one that is asked for from it: 1.329 is not 1.33.
   */
  private int decimals(double index) {
    double asked = report.asked().index();
    int decimals = INDEX_DECIMALS;
    while (index < asked
        && decimals < MOST_DECIMALS
        && texts.number(index, decimals).equals(texts.number(asked, decimals))) {
      decimals++;
    }
    return decimals;
  }

  String required() {
    return texts.number(report.asked().index(), INDEX_DECIMALS);
  }

  String confidence() {
    return percent(report.asked().confidence(), 0);
  }

  String percent(double share, int decimals) {
    return texts.say("percent", "n", texts.number(100 * share, decimals));
  }

  /** Lower to upper, or the one that there is. */
  String bounds(Bounds bounds, Measure measure) {
    String lower = texts.number(measure.shown(bounds.lower()), measure.decimals());
    String upper = texts.number(measure.shown(bounds.upper()), measure.decimals());
    if (bounds.isEmpty()) {
      return texts.say("none");
    }
    if (bounds.upper().isEmpty()) {
      return texts.say("atLeast", "value", lower);
    }
    return bounds.lower().isEmpty()
        ? texts.say("atMost", "value", upper)
        : texts.say("range", "from", lower, "to", upper);
  }

  /** Minutes below an hour, else hours. */
  String span(OptionalDouble seconds) {
    if (seconds.isEmpty()) {
      return texts.say("none");
    }
    double length = seconds.getAsDouble();
    return length < SECONDS_IN_AN_HOUR
        ? texts.say("minutes", "n", texts.number(length / 60, 0))
        : texts.say("hours", "n", texts.number(length / SECONDS_IN_AN_HOUR, 1));
  }

  /** A name of a person or of nobody, where they are left out. */
  String by(String name) {
    return name.isEmpty() ? texts.say("none") : name;
  }

  /** As in a key of the catalogue. */
  static String code(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Names can be long: what stands in a drawing ends in an ellipsis. */
  static String brief(String text, int most) {
    return text.codePointCount(0, text.length()) <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "…";
  }
}
