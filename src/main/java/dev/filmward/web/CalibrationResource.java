package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.VelocityHistory;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.Rescaling;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.pipeline.Rescaling.Temperature;
import dev.filmward.pipeline.RescalingDesk.Done;
import dev.filmward.store.FigureTable.Series;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Calibrations, and the readings that are re-scaled by them. */
final class CalibrationResource {
  private static final int MOST = 500;

  private final Plant plant;
  private final GaugeJson json;

  CalibrationResource(Plant plant) {
    this.plant = plant;
    this.json = new GaugeJson(plant.zone());
  }

  /** The newest, and what those of the same layer say together. */
  void list(Context ctx) {
    List<Calibration> all = plant.gauges().calibrations(MOST);
    ObjectNode answer = Wire.object();
    ArrayNode calibrations = answer.putArray("calibrations");
    all.forEach(each -> calibrations.add(json.calibration(each)));
    ArrayNode histories = answer.putArray("histories");
    Map<Calibration.Subject, List<Calibration>> bySubject =
        all.stream()
            .collect(
                Collectors.groupingBy(
                    Calibration::subject, LinkedHashMap::new, Collectors.toList()));
    bySubject.forEach(
        (subject, some) -> {
          ObjectNode node =
              json.history(VelocityHistory.of(some.stream().map(Calibration::found).toList()));
          histories.add(
              node.put("gauge", subject.gauge())
                  .put("structure", subject.structure())
                  .put("layer", subject.layer())
                  .put("resin", subject.resin()));
        });
    ctx.json(answer);
  }

  /** What the readings give; nothing is kept. */
  void workOut(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Word nobody = new Word(Requests.by(ctx), "worked out", plant.clock().instant());
    ctx.json(json.calibration(plant.gauges().workOut(GaugeRequests.measured(body), nobody)));
  }

  void keep(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(json.calibration(plant.gauges().keep(GaugeRequests.measured(body), word(ctx, body))));
  }

  void preview(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Word word = new Word(Requests.by(ctx), "preview", plant.clock().instant());
    ctx.json(json.preview(plant.rescaling().preview(order(body, word))));
  }

  void rescale(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ctx.json(done(plant.rescaling().apply(order(body, word(ctx, body)))));
  }

  void takeBack(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Series layer =
        new Series(
            Requests.field(body, "line"),
            Requests.field(body, "structure"),
            Requests.wholeNumber(body, "position"));
    LimitsToo limits = LimitsToo.fromWord(Requests.fieldOr(body, "limits", "flag"));
    int version = Requests.wholeNumber(body, "version");
    ctx.json(done(plant.rescaling().takeBack(layer, version, limits, word(ctx, body))));
  }

  private static Rescaling order(JsonNode body, Word word) {
    return new Rescaling(
        Requests.field(body, "line"),
        Requests.field(body, "structure"),
        Requests.wholeNumber(body, "position"),
        Requests.wholeNumber(body, "calibration"),
        GaugeRequests.time(body, "from"),
        temperature(Requests.fieldOr(body, "temperature", "left-out")),
        LimitsToo.fromWord(Requests.fieldOr(body, "limits", "flag")),
        word);
  }

  private static Temperature temperature(String word) {
    return switch (word) {
      case "corrects" -> Temperature.CORRECTS;
      case "left-out" -> Temperature.LEFT_OUT;
      default ->
          throw new IllegalArgumentException(
              "\"temperature\" is \"corrects\" (the readings) or \"left-out\", not \""
                  + word
                  + "\"");
    };
  }

  private ObjectNode done(Done done) {
    return Wire.object()
        .put("version", done.version())
        .put("from", Wire.time(done.from(), plant.zone()))
        .put("samples", done.samples())
        .put("left", done.left())
        .put("limitsCarried", done.limitsCarried());
  }

  private Word word(Context ctx, JsonNode body) {
    return new Word(Requests.by(ctx), Requests.field(body, "reason"), plant.clock().instant());
  }
}
