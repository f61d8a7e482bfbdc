package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.TestsChange;
import dev.filmward.rule.TestsVersion;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Map;

/** Which tests are shown and raise alarms, what that costs, and who decided it. */
final class TestsResource {
  private final Plant plant;

  TestsResource(Plant plant) {
    this.plant = plant;
  }

  /** The choice in force with its price, and the versions, newest first. */
  void get(Context ctx) {
    String line = ctx.pathParam("line");
    String structure = Requests.text(ctx, "structure");
    ObjectNode answer =
        TestsJson.price(plant.priceTests(line, structure, TestsChange.of(Map.of())), plant.zone());
    ArrayNode versions = answer.putArray("versions");
    for (TestsVersion version : plant.tests(line, structure).versions()) {
      versions.insert(0, TestsJson.version(version, plant.zone()));
    }
    ctx.json(answer);
  }

  /** What another choice would cost; nothing is changed. */
  void price(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(
        TestsJson.price(
            plant.priceTests(
                Requests.field(body, "line"),
                Requests.field(body, "structure"),
                TestsRequests.change(body)),
            plant.zone()));
  }

  void choose(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String line = Requests.field(body, "line");
    String structure = Requests.field(body, "structure");
    Decision decision =
        new Decision(
            Requests.by(ctx, body), Requests.field(body, "reason"), plant.clock().instant());
    TestsVersion chosen = plant.chooseTests(line, structure, TestsRequests.change(body), decision);
    ctx.json(TestsJson.version(chosen, plant.zone()));
  }
}
