package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.TellingDesk;
import dev.filmward.pipeline.TellingDesk.RuleLook;
import dev.filmward.telling.Address;
import dev.filmward.telling.Decided;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.Sent;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Map;
import java.util.stream.Collectors;

/** Who is told of alarms and how, and what became of the messages. */
final class TellingResource {
  private static final int MOST_MESSAGES = 200;

  private final Plant plant;
  private final TellingDesk desk;
  private final TellingJson json;

  TellingResource(Plant plant, TellingDesk desk) {
    this.plant = plant;
    this.desk = desk;
    this.json = new TellingJson(plant.zone());
  }

  void rules(Context ctx) {
    ObjectNode answer = Wire.object().put("zone", plant.zone().getId());
    ArrayNode rules = answer.putArray("rules");
    desk.rules().forEach(look -> rules.add(json.rule(look)));
    ctx.json(answer);
  }

  /** Keeps a rule; without an id it is a new one. */
  void keepRule(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    RuleVersion asked =
        new RuleVersion(
            TellingRequests.rule(body),
            0,
            RuleVersion.State.fromWord(body.path("state").asText("on")),
            decided(ctx, body));
    ctx.json(json.rule(desk.keep(asked, TellingRequests.secret(body, "secret"))));
  }

  void settings(Context ctx) {
    ctx.json(json.settings(desk.settings()));
  }

  void keepSettings(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(
        json.settings(
            desk.keep(
                TellingRequests.settings(body),
                decided(ctx, body),
                TellingRequests.secret(body, "password"))));
  }

  /** Sends a test message by a rule's way or to an e-mail address. */
  void test(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String by = Requests.by(ctx, body);
    Sent sent =
        body.path("rule").isIntegralNumber()
            ? desk.test(body.path("rule").asLong(), by)
            : desk.test(Address.email(Requests.field(body, "email")), by);
    ctx.json(Wire.object().put("sent", sent.isTaken()).put("words", sent.words()));
  }

  void outbox(Context ctx) {
    Map<Long, String> names =
        desk.rules().stream()
            .map(RuleLook::version)
            .collect(
                Collectors.toMap(
                    version -> version.rule().id(), version -> version.rule().recipient().name()));
    ObjectNode answer = Wire.object();
    ArrayNode messages = answer.putArray("messages");
    for (OutboxEntry entry : desk.outbox(MOST_MESSAGES)) {
      messages.add(json.message(entry, names.getOrDefault(entry.ruleId(), "a removed rule")));
    }
    ctx.json(answer);
  }

  private Decided decided(Context ctx, JsonNode body) {
    return new Decided(
        Requests.by(ctx, body), Requests.field(body, "reason"), plant.clock().instant());
  }
}
