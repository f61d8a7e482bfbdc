package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.CheckStandard;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.util.OptionalDouble;

/** Known films that gauges are checked on. */
final class CheckResource {
  private final Plant plant;
  private final CheckJson json;

  CheckResource(Plant plant) {
    this.plant = plant;
    this.json = new CheckJson(plant.zone());
  }

  void list(Context ctx) {
    ctx.json(json.all(plant.gaugeChecks().read()));
  }

  /** {@code {"gauge", "name", "thicknessUm", "expandedUm", "k", "sigmaUm", "reason"}}. */
  void keep(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ReferencePiece film = GaugeRequests.known(body);
    OptionalDouble sigma =
        body.hasNonNull("sigmaUm")
            ? OptionalDouble.of(GaugeRequests.number(body, "sigmaUm"))
            : OptionalDouble.empty();
    String gauge = Requests.field(body, "gauge");
    plant.gaugeChecks().keep(new CheckStandard(0, gauge, film, sigma, word(ctx, body)));
    list(ctx);
  }

  /** {@code {"um", "at", "note"}}; now, where no time is given. */
  void note(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Instant at = body.hasNonNull("at") ? GaugeRequests.time(body, "at") : plant.clock().instant();
    double um = GaugeRequests.number(body, "um");
    String note = Requests.fieldOr(body, "note", "");
    plant.gaugeChecks().note(new CheckReading(0, Requests.id(ctx), at, um, Requests.by(ctx), note));
    list(ctx);
  }

  /** {@code {"verdict": "keep|leave-out", "reason"}}. */
  void decide(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String verdict = Requests.field(body, "verdict");
    plant.gaugeChecks().decide(Requests.id(ctx), verdict, word(ctx, body));
    list(ctx);
  }

  private Word word(Context ctx, JsonNode body) {
    return new Word(Requests.by(ctx), Requests.field(body, "reason"), plant.clock().instant());
  }
}
