package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.capability.NormalityGate;
import dev.filmward.drift.Change;
import dev.filmward.drift.Estimate;
import dev.filmward.drift.Forecast;
import dev.filmward.pipeline.LayerLook;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/** What a span of a layer shows beside its means, as JSON. Times in ms since 1970. Stateless. */
final class LayerLookJson {
  private LayerLookJson() {}

  static ObjectNode of(LayerLook look) {
    ObjectNode node = Wire.object().put("unit", "um");
    node.set("lanes", lanes(look.lanes()));
    node.set("spread", look.spread().map(LayerLookJson::spread).orElse(null));
    node.set("movement", movement(look.movement()));
    return node;
  }

  private static ObjectNode lanes(LayerLook.Lanes lanes) {
    ObjectNode node = Wire.object().put("samplesPerColumn", lanes.samplesPerColumn());
    ArrayNode numbers = node.putArray("lanes");
    lanes.lanes().forEach(numbers::add);
    ArrayNode from = node.putArray("from");
    ArrayNode to = node.putArray("to");
    ArrayNode means = node.putArray("means");
    for (LayerLook.Column column : lanes.columns()) {
      from.add(column.from().toEpochMilli());
      to.add(column.to().toEpochMilli());
      ArrayNode values = means.addArray();
      column.means().forEach(mean -> values.add(mean.orElse(null)));
    }
    return node;
  }

  private static ObjectNode spread(LayerLook.Spread spread) {
    ObjectNode node =
        Wire.object()
            .put("readings", spread.readings())
            .put("mean", spread.mean())
            .put("sigma", spread.sigma())
            .put("start", spread.start())
            .put("width", spread.width());
    ArrayNode counts = node.putArray("counts");
    spread.counts().forEach(counts::add);
    node.put("below", spread.outside().below().orElse(null));
    node.put("above", spread.outside().above().orElse(null));
    ArrayNode tails = node.putArray("tails");
    spread.tails().forEach(tails::add);
    node.set("normality", normality(spread.normality()));
    return node;
  }

  private static ObjectNode normality(NormalityGate gate) {
    ObjectNode node = Wire.object().put("verdict", word(gate.verdict()));
    node.put("p", gate.test().map(test -> test.p()).orElse(null));
    node.put("skewness", gate.shape().map(shape -> shape.skewness()).orElse(null));
    node.put("excessKurtosis", gate.shape().map(shape -> shape.excessKurtosis()).orElse(null));
    return node;
  }

  private static ObjectNode movement(LayerLook.Movement movement) {
    ObjectNode node = Wire.object().put("samples", movement.samples());
    node.set("change", movement.change().map(LayerLookJson::change).orElse(null));
    node.set("slope", movement.slope().map(slope -> estimate(slope.perHour())).orElse(null));
    ArrayNode line = node.putArray("line");
    movement
        .line()
        .forEach(point -> line.addObject().put("at", ms(point.at())).put("um", point.um()));
    ArrayNode meetings = node.putArray("meetings");
    movement.meetings().forEach(meeting -> meetings.add(meeting(meeting)));
    return node;
  }

  private static ObjectNode change(Change change) {
    ObjectNode node = Wire.object().put("kind", word(change.kind())).put("at", ms(change.at()));
    put(node, "notBefore", change.notBefore());
    node.put("notAfter", ms(change.notAfter()));
    node.set("size", estimate(change.size()));
    return node.put("p", change.p());
  }

  private static ObjectNode meeting(LayerLook.Meeting meeting) {
    Forecast forecast = meeting.forecast();
    ObjectNode node =
        Wire.object()
            .put("limit", meeting.limit().word())
            .put("um", meeting.um())
            .put("verdict", word(forecast.verdict()));
    put(node, "expected", forecast.expected());
    put(node, "notBefore", forecast.notBefore());
    put(node, "notAfter", forecast.notAfter());
    return node;
  }

  static ObjectNode estimate(Estimate estimate) {
    return Wire.object()
        .put("value", estimate.value())
        .put("lower", estimate.lower())
        .put("upper", estimate.upper());
  }

  private static void put(ObjectNode node, String name, Optional<Instant> at) {
    node.put(name, at.map(LayerLookJson::ms).orElse(null));
  }

  private static long ms(Instant at) {
    return at.toEpochMilli();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
