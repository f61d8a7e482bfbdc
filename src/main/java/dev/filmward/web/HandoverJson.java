package dev.filmward.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.Handover;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.pipeline.Handover.Kept;
import dev.filmward.pipeline.Handover.Part;
import dev.filmward.pipeline.Handover.Section;
import dev.filmward.pipeline.HandoverChange;
import dev.filmward.store.SignedHandover;
import dev.filmward.store.SignedHandover.Signature;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How a handover looks as JSON, which is also the form in which it is signed and kept. */
final class HandoverJson {
  private final ZoneId zone;
  private final ShiftJson shifts;

  HandoverJson(ZoneId zone) {
    this.zone = zone;
    this.shifts = new ShiftJson(zone);
  }

  ObjectNode of(Handover handover) {
    ObjectNode node = Wire.object().put("line", handover.line());
    node.set("shift", shifts.shift(handover.shift()));
    node.put("asOf", Wire.time(handover.asOf(), zone)).put("zone", zone.getId());
    ArrayNode sections = node.putArray("sections");
    for (Section section : handover.sections()) {
      ObjectNode one =
          sections
              .addObject()
              .put("part", section.part().word())
              .put("kept", section.kept() == Kept.KEPT);
      ArrayNode items = one.putArray("items");
      section.items().forEach(item -> items.add(item(item)));
    }
    return node;
  }

  ObjectNode signed(SignedHandover signed, Handover now) {
    JsonNode content = tree(signed.content());
    ObjectNode node = Wire.object().put("digest", signed.digest());
    node.set("handover", content);
    ArrayNode signatures = node.putArray("signatures");
    for (Signature signature : signed.signatures()) {
      signatures
          .addObject()
          .put("side", signature.side().word())
          .put("by", signature.by())
          .put("meaning", signature.meaning())
          .put("at", Wire.time(signature.at(), zone));
    }
    ArrayNode changes = node.putArray("changes");
    HandoverChange.between(sections(content), now.sections())
        .forEach(
            change ->
                changes.add(
                    item(change.item())
                        .put("part", change.part().word())
                        .put("how", change.how())));
    return node;
  }

  /** To the letter, as it is signed. */
  static String text(ObjectNode handover) {
    try {
      return Wire.mapper().writeValueAsString(handover);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree can always be written", e);
    }
  }

  private ObjectNode item(Item item) {
    return Wire.object()
        .put("key", item.key())
        .put("line", item.line())
        .put("title", item.title())
        .put("state", item.state())
        .put("detail", item.detail())
        .put("at", item.at().map(at -> Wire.time(at, zone)).orElse(null));
  }

  private static JsonNode tree(String content) {
    try {
      return Wire.mapper().readTree(content);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("what was signed is no JSON any more", e);
    }
  }

  /** Parts that are not known any more are left out. */
  private static List<Section> sections(JsonNode handover) {
    List<Section> sections = new ArrayList<>();
    for (JsonNode section : handover.path("sections")) {
      part(section.path("part").asText()).ifPresent(part -> sections.add(section(part, section)));
    }
    return sections;
  }

  private static Optional<Part> part(String word) {
    return Arrays.stream(Part.values()).filter(part -> part.word().equals(word)).findFirst();
  }

  private static Section section(Part part, JsonNode section) {
    List<Item> items = new ArrayList<>();
    for (JsonNode item : section.path("items")) {
      items.add(
          new Item(
              item.path("key").asText(),
              item.path("line").asText(),
              item.path("title").asText(),
              item.path("state").asText(),
              item.path("detail").asText(),
              Optional.ofNullable(item.get("at"))
                  .filter(at -> !at.isNull())
                  .map(at -> OffsetDateTime.parse(at.asText()).toInstant())));
    }
    return new Section(part, section.path("kept").asBoolean() ? Kept.KEPT : Kept.NOT_YET, items);
  }
}
