package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlreadyTakenException;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.Tables;
import dev.filmward.telling.Escalation.Raised;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;

/** Alarms, and what people do about them. */
final class AlarmResource {
  private static final int MOST = 500;
  private static final int LONGEST_SEARCH = 100;
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd 'at' HH:mm", Locale.ROOT);

  private final Plant plant;

  AlarmResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    String state = ctx.queryParam("state");
    boolean all = "all".equals(state);
    if (!all && state != null && !"open".equals(state)) {
      throw new IllegalArgumentException("state is open or all, not \"" + state + "\"");
    }
    ObjectNode answer = Wire.object();
    ArrayNode array = answer.putArray("alarms");
    plant
        .store()
        .read(
            tables -> {
              List<Alarm> alarms = all ? tables.alarms().newest(MOST) : tables.alarms().open();
              CareJson care = care(tables);
              alarms.forEach(alarm -> array.add(json(tables, alarm, care)));
              return array;
            });
    ctx.json(answer);
  }

  /** Alarms, open and closed, in whose comments, causes or actions a text stands. */
  void search(Context ctx) {
    String text = Requests.text(ctx, "words").strip();
    if (text.isEmpty() || text.length() > LONGEST_SEARCH) {
      throw new IllegalArgumentException("words is 1 to " + LONGEST_SEARCH + " characters");
    }
    ObjectNode answer = Wire.object();
    ArrayNode array = answer.putArray("alarms");
    plant
        .store()
        .read(
            tables -> {
              CareJson care = care(tables);
              tables.care().search(text, MOST).stream()
                  .map(tables.alarms()::find)
                  .flatMap(Optional::stream)
                  .forEach(alarm -> array.add(json(tables, alarm, care)));
              return array;
            });
    ctx.json(answer);
  }

  void get(Context ctx) {
    long id = Requests.id(ctx);
    ctx.json(read(id));
  }

  void acknowledge(Context ctx) throws IOException {
    long id = Requests.id(ctx);
    try {
      plant.acknowledge(id, Requests.by(ctx, Requests.body(ctx)));
    } catch (AlreadyTakenException e) {
      String when = MINUTE.format(e.first().at().atZone(plant.zone()));
      throw new IllegalStateException(e.getMessage() + ", on " + when, e);
    }
    ctx.json(read(id));
  }

  ObjectNode read(long id) {
    return plant
        .store()
        .read(
            tables ->
                tables
                    .alarms()
                    .find(id)
                    .map(alarm -> json(tables, alarm, care(tables)))
                    .orElseThrow(() -> new NoSuchElementException("no alarm " + id)));
  }

  private ObjectNode json(Tables tables, Alarm alarm, CareJson care) {
    ObjectNode node =
        new AlarmJson(plant.structures(), plant.zone(), tables.holds().goingOn())
            .of(alarm, tables.alarms());
    care.add(node, alarm);
    return node.put(
        "escalatedAt",
        tables
            .telling()
            .raised(alarm.id())
            .flatMap(Raised::escalatedAt)
            .map(at -> Wire.time(at, plant.zone()))
            .orElse(null));
  }

  private CareJson care(Tables tables) {
    return new CareJson(tables, plant.structures(), plant.zone());
  }
}
