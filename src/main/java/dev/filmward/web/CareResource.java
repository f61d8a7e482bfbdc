package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.alarm.OwnerChangedException;
import dev.filmward.pipeline.AlarmDesk;
import dev.filmward.pipeline.Explanation;
import dev.filmward.pipeline.HandingOn;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** What people do about an alarm after they took it. Each act answers with the alarm. */
final class CareResource {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd 'at' HH:mm", Locale.ROOT);

  private final Plant plant;
  private final AlarmResource alarms;

  CareResource(Plant plant, AlarmResource alarms) {
    this.plant = plant;
    this.alarms = alarms;
  }

  /** One thing that a person does about an alarm. */
  private interface Act {
    void run(AlarmDesk desk, long id, JsonNode body, String by);
  }

  void explain(Context ctx) throws IOException {
    act(
        ctx,
        (desk, id, body, by) ->
            desk.explain(
                id,
                new Explanation(
                    Requests.field(body, "cause"),
                    Requests.fieldOr(body, "note", ""),
                    Requests.fieldOr(body, "action", ""),
                    by)));
  }

  void comment(Context ctx) throws IOException {
    act(ctx, (desk, id, body, by) -> desk.comment(id, by, Requests.field(body, "words")));
  }

  void reopen(Context ctx) throws IOException {
    act(ctx, (desk, id, body, by) -> desk.reopen(id, by, Requests.field(body, "reason")));
  }

  void handOn(Context ctx) throws IOException {
    act(
        ctx,
        (desk, id, body, by) -> {
          if (!body.has("from")) {
            throw new IllegalArgumentException(
                "\"from\" is missing: the owner that you see, or null");
          }
          HandingOn handover =
              new HandingOn(
                  Requests.field(body, "to"),
                  body.path("from").isNull() ? "" : Requests.fieldOr(body, "from", ""),
                  Requests.fieldOr(body, "why", ""),
                  by);
          handOn(desk, id, handover);
        });
  }

  private void handOn(AlarmDesk desk, long id, HandingOn handover) {
    try {
      desk.handOn(id, handover);
    } catch (OwnerChangedException e) {
      String when =
          e.now().map(now -> ", on " + MINUTE.format(now.at().atZone(plant.zone()))).orElse("");
      throw new IllegalStateException(e.getMessage() + when, e);
    }
  }

  void check(Context ctx) throws IOException {
    act(
        ctx,
        (desk, id, body, by) ->
            desk.check(
                id,
                new DoneCheck(
                    Requests.field(body, "check"),
                    DoneCheck.Outcome.fromWord(Requests.field(body, "outcome")),
                    Requests.fieldOr(body, "note", ""),
                    by,
                    plant.clock().instant())));
  }

  private void act(Context ctx, Act act) throws IOException {
    long id = Requests.id(ctx);
    JsonNode body = Requests.body(ctx);
    act.run(plant.alarmDesk(), id, body, Requests.by(ctx, body));
    ctx.json(alarms.read(id));
  }
}
