package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.LooseRows;
import dev.filmward.pipeline.HeldFile;
import dev.filmward.pipeline.MendReport;
import dev.filmward.store.HeldRow;
import java.time.ZoneId;
import java.util.List;

/** Rows in quarantine, and what became of mended ones, as JSON. */
final class HeldJson {
  private HeldJson() {}

  static ObjectNode of(HeldFile held, ZoneId zone) {
    ObjectNode answer =
        Wire.object().put("heading", held.heading()).put("obstacle", held.obstacle());
    ArrayNode headings = answer.putArray("headings");
    held.reader()
        .ifPresent(
            reader -> {
              reader.headings().forEach(headings::add);
              answer.put("separator", String.valueOf(reader.separator()));
            });
    ArrayNode rows = answer.putArray("rows");
    held.rows().forEach(row -> rows.add(row(held, row, zone)));
    return answer;
  }

  static ObjectNode of(MendReport report, ObjectNode file) {
    ObjectNode answer = Wire.object().put("mended", report.mended());
    answer.set("file", report.file().isPresent() ? file : null);
    ArrayNode still = answer.putArray("still");
    for (MendReport.Still row : report.still()) {
      still
          .addObject()
          .put("row", row.id())
          .put("line", row.line())
          .put("text", row.text())
          .put("reason", row.reason());
    }
    return answer;
  }

  private static ObjectNode row(HeldFile held, HeldRow row, ZoneId zone) {
    ObjectNode node =
        Wire.object()
            .put("id", row.id())
            .put("line", row.row().line())
            .put("column", row.row().column())
            .put("value", row.row().value())
            .put("reason", row.row().reason())
            .put("raw", row.row().raw())
            .put("readings", row.row().readings())
            .put("state", row.isOpen() ? "open" : "mended");
    ArrayNode cells = node.putArray("cells");
    held.reader().map(reader -> cells(reader, row)).orElse(List.of()).forEach(cells::add);
    row.mended()
        .ifPresent(
            mended ->
                node.putObject("mended")
                    .put("text", mended.text())
                    .put("by", mended.by())
                    .put("at", Wire.time(mended.at(), zone))
                    .put("file", mended.fileId()));
    return node;
  }

  /** Of an open row that can be split; of any other the whole row is shown. */
  private static List<String> cells(LooseRows reader, HeldRow row) {
    return row.isOpen() ? reader.attempt(row.row().raw()).cells() : List.of();
  }
}
