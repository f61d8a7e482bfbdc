package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structures;
import dev.filmward.intake.FilePreview;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.HeadText;
import dev.filmward.intake.Mapping;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.Mappings;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Recognition;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Mappings for files with headings of their own: those kept, a proposal, and a new one. */
final class MappingResource {
  private static final long LARGEST_MAPPING = 1L << 20;

  private final Plant plant;

  MappingResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode mappings = answer.putArray("mappings");
    for (Mapping mapping : plant.mappings().kept().all()) {
      ObjectNode node = mappings.addObject().put("name", mapping.name());
      mapping.form().headings().forEach(node.putArray("headings")::add);
    }
    ctx.json(answer);
  }

  /** Looks at the beginning of the body only; nothing of it is stored. */
  void propose(Context ctx) throws IOException, FileRefused {
    String name = Requests.text(ctx, "name");
    byte[] head;
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), FileResource.LARGEST_UPLOAD)) {
      head = HeadText.take(body);
    }
    Map<String, String> answers = answers(ctx);
    ObjectNode answer = Wire.object();
    if (answers.isEmpty() && isReadAlready(head, name, answer)) {
      ctx.json(answer);
      return;
    }
    Proposal proposal =
        Recognition.of(
            head, name, new Recognition.Known(plant.structures(), plant.zone()), answers);
    ProposalJson.put(proposal, answer);
    if (proposal.mapping().isPresent()) {
      Mappings mappings = new Mappings(List.of(proposal.mapping().get()));
      look(head, name, mappings, answer);
    }
    ctx.json(answer);
  }

  void keep(Context ctx) throws IOException, MappingFault {
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST_MAPPING)) {
      Mapping kept = plant.keepMapping(body.readAllBytes(), Requests.by(ctx));
      ctx.json(Wire.object().put("name", kept.name()));
    }
  }

  /** Whether a mapping that is kept, or none, will do. */
  private boolean isReadAlready(byte[] head, String name, ObjectNode answer) throws IOException {
    try {
      look(head, name, plant.mappings().current(), answer);
      answer.put("needs", "nothing");
      return true;
    } catch (FileRefused e) {
      return false;
    }
  }

  private void look(byte[] head, String name, Mappings mappings, ObjectNode answer)
      throws IOException, FileRefused {
    Structures known = plant.structures();
    ReadingsParser parser = new ReadingsParser(known, plant.zone(), mappings);
    FilePreview preview =
        FilePreview.of(parser, new ByteArrayInputStream(head), name, Proposal.FIRST_ROWS);
    answer.put("described", preview.dialect().describe());
    ArrayNode read = answer.putArray("read");
    preview.read().forEach(row -> read.add(ProposalJson.row(row, plant.zone())));
    preview.count().notes().forEach(answer.putArray("notes")::add);
  }

  private static Map<String, String> answers(Context ctx) throws IOException {
    String given = ctx.queryParam("answers");
    Map<String, String> answers = new LinkedHashMap<>();
    if (given != null && !given.isEmpty()) {
      JsonNode node = Wire.mapper().readTree(given);
      node.properties().forEach(entry -> answers.put(entry.getKey(), entry.getValue().asText()));
    }
    return answers;
  }
}
