package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.shift.CalendarVersion;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftCalendar;
import dev.filmward.shift.ShiftPattern;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** How shifts and their calendars look as JSON, and what a request says of them. */
final class ShiftJson {
  private final ZoneId zone;

  ShiftJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode shift(Shift shift) {
    return Wire.object()
        .put("shift", shift.word())
        .put("day", shift.day().toString())
        .put("name", shift.name())
        .put("from", time(shift.from()))
        .put("to", time(shift.to()))
        .put("hours", shift.length().toMinutes() / 60.0)
        .put("crew", shift.crew().orElse(null));
  }

  ObjectNode version(CalendarVersion version) {
    return calendar(version.calendar())
        .put("version", version.version())
        .put("holdsFrom", version.holdsFrom().toString())
        .put("by", version.author())
        .put("reason", version.reason())
        .put("at", time(version.decidedAt()));
  }

  ObjectNode calendar(ShiftCalendar calendar) {
    ObjectNode node = Wire.object().put("linesPerOperator", calendar.linesPerOperator());
    ArrayNode patterns = node.putArray("shifts");
    for (ShiftPattern pattern : calendar.patterns()) {
      ObjectNode one =
          patterns
              .addObject()
              .put("name", pattern.name())
              .put("startsAt", pattern.startsAt().toString());
      ArrayNode days = one.putArray("days");
      pattern.days().stream().sorted().forEach(day -> days.add(day.getValue()));
      ArrayNode crews = one.putArray("crews");
      pattern.crews().forEach(crews::add);
    }
    return node;
  }

  private String time(Instant instant) {
    return Wire.time(instant, zone);
  }

  static ShiftCalendar readCalendar(JsonNode body) {
    List<ShiftPattern> patterns = new ArrayList<>();
    for (JsonNode each : body.path("shifts")) {
      patterns.add(
          new ShiftPattern(
              Requests.field(each, "name"),
              clock(Requests.field(each, "startsAt")),
              days(each.path("days")),
              crews(each.path("crews"))));
    }
    if (!body.path("linesPerOperator").isInt()) {
      throw new IllegalArgumentException(
          "\"linesPerOperator\" is missing: how many lines one person looks after");
    }
    return new ShiftCalendar(patterns, body.path("linesPerOperator").asInt());
  }

  static LocalDate readDay(JsonNode body) {
    String text = Requests.field(body, "holdsFrom");
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"holdsFrom\" is a day such as 2026-11-25, not \"" + text + "\"", e);
    }
  }

  private static LocalTime clock(String text) {
    try {
      return LocalTime.parse(text);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"startsAt\" is a time such as 06:00, not \"" + text + "\"", e);
    }
  }

  private static Set<DayOfWeek> days(JsonNode numbers) {
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    for (JsonNode number : numbers) {
      if (!number.isInt() || number.asInt() < 1 || number.asInt() > 7) {
        throw new IllegalArgumentException("\"days\" are numbers from 1 (Monday) to 7");
      }
      days.add(DayOfWeek.of(number.asInt()));
    }
    return days;
  }

  private static List<String> crews(JsonNode names) {
    List<String> crews = new ArrayList<>();
    names.forEach(name -> crews.add(name.asText("")));
    return crews;
  }
}
