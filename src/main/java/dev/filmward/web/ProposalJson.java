package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.FilePreview;
import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Question;
import java.time.ZoneId;

/** How a proposed mapping looks as JSON. Stateless. */
final class ProposalJson {
  private ProposalJson() {}

  static void put(Proposal proposal, ObjectNode answer) {
    answer.put("needs", proposal.questions().isEmpty() ? "mapping" : "answers");
    answer.put("yaml", proposal.yaml());
    ArrayNode columns = answer.putArray("columns");
    for (Proposal.ProposedColumn column : proposal.columns()) {
      columns
          .addObject()
          .put("name", column.name())
          .put("meaning", column.meaning())
          .put("unit", column.unit())
          .put("reason", column.reason());
    }
    ArrayNode rows = answer.putArray("rows");
    proposal.rows().forEach(row -> row.forEach(rows.addArray()::add));
    proposal.reasons().forEach(answer.putArray("reasons")::add);
    ArrayNode questions = answer.putArray("questions");
    proposal.questions().forEach(question -> questions.add(json(question)));
  }

  static ObjectNode row(FilePreview.RowRead row, ZoneId zone) {
    ObjectNode node = Wire.object();
    ArrayNode readings = node.putArray("readings");
    for (FilePreview.Place place : row.readings()) {
      ObjectNode reading = readings.addObject();
      reading
          .put("takenAt", Wire.time(place.takenAt(), zone))
          .put("line", place.key().line())
          .put("structure", place.key().structure())
          .put("roll", place.key().roll())
          .put("sample", place.key().sample())
          .put("lane", place.lane())
          .put("layer", place.layer());
      Wire.number(reading, "um", place.um());
    }
    row.faults().forEach(node.putArray("faults")::add);
    return node;
  }

  private static ObjectNode json(Question question) {
    ObjectNode node = Wire.object().put("key", question.key()).put("words", question.words());
    ArrayNode choices = node.putArray("choices");
    question
        .choices()
        .forEach(c -> choices.addObject().put("value", c.value()).put("words", c.words()));
    return node;
  }
}
