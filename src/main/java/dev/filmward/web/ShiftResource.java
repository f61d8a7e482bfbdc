package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ShiftDesk;
import dev.filmward.shift.CalendarVersion;
import dev.filmward.shift.ShiftBook;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;

/** The plant's shift calendar. */
final class ShiftResource {
  private static final Duration AHEAD = Duration.ofDays(14);

  private final Plant plant;
  private final ShiftDesk desk;
  private final ShiftJson json;

  ShiftResource(Plant plant) {
    this.plant = plant;
    this.desk = new ShiftDesk(plant);
    this.json = new ShiftJson(plant.zone());
  }

  void get(Context ctx) {
    ShiftBook book = desk.book();
    Instant now = plant.clock().instant();
    ObjectNode answer =
        Wire.object()
            .put("now", Wire.time(now, plant.zone()))
            .put("zone", plant.zone().getId())
            .put("today", book.date(now).toString())
            .put("earliest", desk.earliest().map(LocalDate::toString).orElse(null));
    answer.set("current", json.shift(book.at(now)));
    answer.set("calendar", json.calendar(book.on(book.date(now))));
    ArrayNode versions = answer.putArray("versions");
    book.versions().forEach(version -> versions.insert(0, json.version(version)));
    ArrayNode ahead = answer.putArray("ahead");
    book.within(now, now.plus(AHEAD)).forEach(shift -> ahead.add(json.shift(shift)));
    ctx.json(answer);
  }

  void set(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    CalendarVersion version =
        desk.set(
            ShiftJson.readCalendar(body),
            ShiftJson.readDay(body),
            Requests.by(ctx, body),
            Requests.field(body, "reason"));
    ctx.json(json.version(version));
  }
}
