package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlreadyTakenException;
import dev.filmward.alarm.Finding;
import dev.filmward.diagnosis.Causes;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.Tables;
import dev.filmward.telling.Escalation.Raised;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;

/** Alarms, and what people do about them. */
final class AlarmResource {
  private static final int MOST = 500;
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
              alarms.forEach(alarm -> array.add(json(tables, alarm)));
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

  void explain(Context ctx) throws IOException {
    long id = Requests.id(ctx);
    JsonNode body = Requests.body(ctx);
    plant.explain(
        id,
        new Finding(
            Requests.field(body, "cause"),
            Requests.field(body, "action"),
            Requests.by(ctx, body),
            plant.clock().instant()));
    ctx.json(read(id));
  }

  void causes(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode causes = answer.putArray("causes");
    Causes.toChooseFrom().forEach(causes::add);
    ctx.json(answer);
  }

  private ObjectNode read(long id) {
    return plant
        .store()
        .read(
            tables ->
                tables
                    .alarms()
                    .find(id)
                    .map(alarm -> json(tables, alarm))
                    .orElseThrow(() -> new NoSuchElementException("no alarm " + id)));
  }

  private ObjectNode json(Tables tables, Alarm alarm) {
    return new AlarmJson(plant.structures(), plant.zone())
        .of(alarm, tables.alarms())
        .put(
            "escalatedAt",
            tables
                .telling()
                .raised(alarm.id())
                .flatMap(Raised::escalatedAt)
                .map(at -> Wire.time(at, plant.zone()))
                .orElse(null));
  }
}
