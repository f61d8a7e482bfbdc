package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.gauge.screen.Treatment;
import dev.filmward.pipeline.MissingShare;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.ScreeningTable.Depth;
import dev.filmward.store.ScreeningTable.Question;
import dev.filmward.store.ScreeningVersion;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Samples that look misread, what people decide about them, and how readings are screened. */
final class ScreeningResource {
  private static final int MOST = 50;
  private static final Duration MISSING_SINCE = Duration.ofDays(14);

  private final Plant plant;
  private final ScreeningJson json;

  ScreeningResource(Plant plant) {
    this.plant = plant;
    this.json = new ScreeningJson(plant);
  }

  /** The newest, as the query narrows them. */
  void list(Context ctx) {
    Optional<Misread> kind = optional(ctx, "kind").map(Misread::fromWord);
    String state = Requests.textOr(ctx, "state", "open");
    ObjectNode answer = Wire.object();
    ArrayNode samples = answer.putArray("samples");
    plant
        .screening()
        .list(
            new Question(
                optional(ctx, "line"),
                optional(ctx, "structure"),
                kind,
                states(state),
                "open".equals(state) && kind.isEmpty() ? Depth.WITHOUT_MERE_GAPS : Depth.ALL,
                MOST))
        .forEach(suspect -> samples.add(json.suspect(suspect)));
    ctx.json(answer.put("most", MOST));
  }

  private static Optional<String> optional(Context ctx, String name) {
    return Optional.of(Requests.textOr(ctx, name, "")).filter(text -> !text.isEmpty());
  }

  private static List<ScreeningState> states(String word) {
    return switch (word) {
      case "open" -> List.of(ScreeningState.HELD_OUT, ScreeningState.MARKED);
      case "all" -> List.of(ScreeningState.values());
      default -> List.of(ScreeningState.fromWord(word));
    };
  }

  void putBack(Context ctx) throws IOException {
    decide(ctx, ScreeningState.PUT_BACK);
  }

  void confirm(Context ctx) throws IOException {
    decide(ctx, ScreeningState.CONFIRMED);
  }

  void leaveOut(Context ctx) throws IOException {
    decide(ctx, ScreeningState.LEFT_OUT);
  }

  private void decide(Context ctx, ScreeningState state) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(json.suspect(plant.screening().decide(Requests.id(ctx), state, decision(ctx, body))));
  }

  private Decision decision(Context ctx, JsonNode body) {
    return new Decision(
        Requests.by(ctx, body), Requests.field(body, "reason"), plant.clock().instant());
  }

  /** What is done about each kind now, and the versions, newest first. */
  void settings(Context ctx) {
    List<ScreeningVersion> versions =
        plant.screening().versions(ctx.pathParam("line"), Requests.text(ctx, "structure"));
    ScreeningRules rules =
        versions.isEmpty() ? ScreeningRules.USUAL : versions.get(versions.size() - 1).rules();
    ObjectNode answer = json.rules(rules).put("version", versions.size());
    ArrayNode list = answer.putArray("versions");
    versions.forEach(version -> list.insert(0, json.version(version)));
    ctx.json(answer);
  }

  void set(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(
        json.version(
            plant
                .screening()
                .set(
                    Requests.field(body, "line"),
                    Requests.field(body, "structure"),
                    rules(body),
                    decision(ctx, body))));
  }

  private static ScreeningRules rules(JsonNode body) {
    Map<Misread, Treatment> treatments = new EnumMap<>(Misread.class);
    for (JsonNode each : Requests.array(body, "kinds")) {
      treatments.put(
          Misread.fromWord(Requests.field(each, "kind")),
          Treatment.fromWord(Requests.field(each, "treatment")));
    }
    JsonNode mhz = body.path("gaugeMhz");
    if (!mhz.isNumber() && !mhz.isNull() && !mhz.isMissingNode()) {
      throw new IllegalArgumentException("\"gaugeMhz\" is a number of MHz, or null");
    }
    return new ScreeningRules(
        treatments, mhz.isNumber() ? OptionalDouble.of(mhz.asDouble()) : OptionalDouble.empty());
  }

  /** Readings that were not measured in the last 14 days, by day and lane. */
  void missing(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode days = answer.putArray("shares");
    for (MissingShare share :
        plant
            .screening()
            .missing(
                ctx.pathParam("line"),
                Requests.text(ctx, "structure"),
                plant.clock().instant().minus(MISSING_SINCE))) {
      days.addObject()
          .put("day", share.day().toString())
          .put("lane", share.lane())
          .put("places", share.places())
          .put("missing", share.missing());
    }
    ctx.json(answer);
  }
}
