package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.pipeline.AlarmFiguresReader;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.SparedReader;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;

/** How good the alarms are, and which settings would have spared them. */
final class FiguresResource {
  private static final Duration USUAL = Duration.ofDays(30);
  private static final Duration LONGEST = Duration.ofDays(366);

  private final Plant plant;
  private final AlarmFiguresReader reader;
  private final SparedReader spared;
  private final FiguresJson json;

  FiguresResource(Plant plant) {
    this.plant = plant;
    this.reader = new AlarmFiguresReader(plant);
    this.spared = new SparedReader(plant);
    this.json = new FiguresJson(plant.zone());
  }

  void get(Context ctx) {
    AlarmSpan period = period(ctx);
    AlarmFiguresReader.Told told = reader.read(period, Requests.textOr(ctx, "line", ""));
    ObjectNode answer = about(period);
    answer.put("linesPerOperator", told.linesPerOperator()).put("historical", told.historical());
    answer.set("figures", json.of(told.figures()));
    answer.set("targets", FiguresJson.targets());
    ctx.json(answer);
  }

  void spared(Context ctx) {
    AlarmSpan period = period(ctx);
    ObjectNode answer = about(period);
    ArrayNode topics = answer.putArray("topics");
    spared.read(period, Requests.textOr(ctx, "line", "")).stream()
        .map(json::spared)
        .forEach(topics::add);
    ctx.json(answer);
  }

  private ObjectNode about(AlarmSpan period) {
    return Wire.object()
        .put("now", Wire.time(plant.clock().instant(), plant.zone()))
        .put("zone", plant.zone().getId())
        .put("from", Wire.time(period.from(), plant.zone()))
        .put("to", Wire.time(period.to(), plant.zone()))
        .put("days", period.length().toMinutes() / 1440.0);
  }

  /** The last 30 days where nothing else is asked; never later than now. */
  private AlarmSpan period(Context ctx) {
    Instant now = plant.clock().instant().truncatedTo(ChronoUnit.SECONDS);
    Instant to = time(ctx, "to", now);
    to = to.isAfter(now) ? now : to;
    Instant from = time(ctx, "from", to.minus(USUAL));
    if (!from.isBefore(to) || from.isBefore(Instant.EPOCH)) {
      throw new IllegalArgumentException("from must lie before to and now, and after 1970");
    }
    if (Duration.between(from, to).compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("at most " + LONGEST.toDays() + " days at once");
    }
    return new AlarmSpan(from, to);
  }

  private static Instant time(Context ctx, String name, Instant other) {
    String text = Requests.textOr(ctx, name, "");
    try {
      return text.isEmpty() ? other : OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          name + " is a time such as 2026-11-25T06:00:00+01:00, not \"" + text + "\"", e);
    }
  }
}
