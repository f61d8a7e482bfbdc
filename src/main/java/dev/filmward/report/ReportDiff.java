package dev.filmward.report;

import dev.filmward.report.CharacteristicWeek.EarlierSpec;
import dev.filmward.report.CharacteristicWeek.LaneWeek;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Takes two reports, gives the figures that differ, with full digits, and whether any reading does.
 */
public final class ReportDiff {
  /** Of the data's digest; so many tell two apart. */
  private static final int DIGITS = 12;

  private ReportDiff() {}

  public static List<ReportChange> of(WeeklyReport before, WeeklyReport after) {
    Map<Place, String> old = figures(before);
    Map<Place, String> now = figures(after);
    List<ReportChange> changes = new ArrayList<>();
    now.forEach((place, value) -> add(changes, place, old.getOrDefault(place, ""), value));
    old.forEach(
        (place, value) -> {
          if (!now.containsKey(place)) {
            add(changes, place, value, "");
          }
        });
    return changes;
  }

  private record Place(String line, String structure, String characteristic, String figure) {}

  private static void add(List<ReportChange> changes, Place place, String before, String after) {
    if (!before.equals(after)) {
      changes.add(
          new ReportChange(
              place.line, place.structure, place.characteristic, place.figure, before, after));
    }
  }

  private static Map<Place, String> figures(WeeklyReport report) {
    Map<Place, String> figures = new LinkedHashMap<>();
    figures.put(new Place("", "", "", "data"), report.dataDigest().substring(0, DIGITS));
    for (FilmWeek film : report.films()) {
      put(figures, film, "", "verdict", film.verdict().name());
      put(figures, film, "", "received", String.valueOf(film.samples().received()));
      put(figures, film, "", "expected", String.valueOf(film.samples().expected()));
      put(figures, film, "", "missing", String.valueOf(film.samples().missingReadings()));
      put(figures, film, "", "calibrations", String.valueOf(film.gauge().calibrations().size()));
      put(figures, film, "", "scalings", String.valueOf(film.gauge().scalings().size()));
      put(figures, film, "", "limits", String.valueOf(film.limits().size()));
      put(figures, film, "", "leftOut", String.valueOf(film.leftOut().size()));
      put(figures, film, "", "alarms", String.valueOf(film.alarms().opened()));
      put(figures, film, "", "unexplained", String.valueOf(film.alarms().unexplained()));
      for (CharacteristicWeek each : film.characteristics()) {
        characteristic(figures, film, each);
      }
    }
    return figures;
  }

  private static void characteristic(
      Map<Place, String> figures, FilmWeek film, CharacteristicWeek each) {
    String name =
        each.kind().word()
            + (each.position() == 0 ? "" : " " + each.position() + " " + each.name());
    put(figures, film, name, "readings", String.valueOf(each.readings()));
    put(figures, film, name, "mean", text(each.mean()));
    put(figures, film, name, "sigmaWithin", text(each.sigmaWithin()));
    put(figures, film, name, "sigmaOverall", text(each.sigmaOverall()));
    put(figures, film, name, "kind", each.index().kind().name());
    put(figures, film, name, "cpk", text(each.index().cpk()));
    put(figures, film, name, "ppk", text(each.index().ppk()));
    put(figures, film, name, "observedPpm", text(each.observedPpm()));
    put(figures, film, name, "signalled", String.valueOf(each.steadiness().signalled()));
    put(figures, film, name, "atLeast", text(each.index().atLeast()));
    if (!each.earlier().isEmpty()) {
      put(
          figures,
          film,
          name,
          "earlierReadings",
          earlier(each, of -> String.valueOf(of.readings())));
      put(figures, film, name, "earlierPpk", earlier(each, of -> text(of.index().ppk())));
    }
    for (LaneWeek lane : each.lanes()) {
      put(figures, film, name, "lane " + lane.lane(), String.valueOf(lane.mean()));
    }
  }

  /** A week seldom has more than one earlier specification. */
  private static String earlier(CharacteristicWeek each, Function<EarlierSpec, String> figure) {
    return each.earlier().stream().map(figure).collect(Collectors.joining(" / "));
  }

  private static String text(OptionalDouble value) {
    return value.isPresent() ? String.valueOf(value.getAsDouble()) : "";
  }

  private static void put(
      Map<Place, String> figures, FilmWeek film, String name, String figure, String value) {
    figures.put(new Place(film.line(), film.structure(), name, figure), value);
  }
}
