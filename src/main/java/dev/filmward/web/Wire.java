package dev.filmward.web;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.RawValue;
import dev.filmward.chart.Band;
import dev.filmward.diagnosis.Revision;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.rule.Signal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.OptionalDouble;

/** How values of ours look as JSON. Stateless. */
final class Wire {
  private static final ObjectMapper MAPPER = mapper();

  private Wire() {}

  /** Numbers in the fewest digits that give them back; the usual way to them takes far longer. */
  static ObjectMapper mapper() {
    return new ObjectMapper(
        JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build());
  }

  static byte[] bytes(JsonNode json) {
    try {
      return MAPPER.writeValueAsBytes(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("JSON could not be written", e);
    }
  }

  /** For something that is written into many answers. */
  static RawValue written(JsonNode json) {
    return new RawValue(new String(bytes(json), StandardCharsets.UTF_8));
  }

  static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  /** ISO 8601 with the offset of a zone. */
  static String time(Instant instant, ZoneId zone) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(instant.atZone(zone).toOffsetDateTime());
  }

  static ObjectNode characteristic(Characteristic characteristic) {
    return object()
        .put("kind", characteristic.kind().word())
        .put("position", characteristic.position())
        .put("name", characteristic.name());
  }

  static ObjectNode spec(SpecLimits spec) {
    ObjectNode node = object();
    spec.lower().ifPresent(value -> node.put("lower", value));
    spec.target().ifPresent(value -> node.put("target", value));
    spec.upper().ifPresent(value -> node.put("upper", value));
    return node;
  }

  static ObjectNode band(Band band) {
    return object()
        .put("lower", band.lower())
        .put("centre", band.centre())
        .put("upper", band.upper());
  }

  static ObjectNode signal(Signal signal) {
    return object()
        .put("chart", signal.chart().word())
        .put("test", signal.test().word())
        .put("side", signal.side().word());
  }

  static ArrayNode signals(List<Signal> signals) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    signals.forEach(signal -> array.add(signal(signal)));
    return array;
  }

  /** Adds the newest version, 0 where there is none, and all of them, newest first. */
  static ObjectNode versions(ObjectNode answer, List<Revision> revisions, ZoneId zone) {
    answer.put("version", revisions.stream().findFirst().map(Revision::version).orElse(0));
    ArrayNode versions = answer.putArray("versions");
    for (Revision revision : revisions) {
      versions
          .addObject()
          .put("version", revision.version())
          .put("by", revision.author())
          .put("reason", revision.reason())
          .put("at", time(revision.at(), zone));
    }
    return answer;
  }

  /** Puts a number, or null where there is none. */
  static void number(ObjectNode node, String name, OptionalDouble value) {
    if (value.isPresent()) {
      node.put(name, value.getAsDouble());
    } else {
      node.putNull(name);
    }
  }
}
