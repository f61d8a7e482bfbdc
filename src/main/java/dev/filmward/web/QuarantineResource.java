package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.HeldFile;
import dev.filmward.pipeline.MendReport;
import dev.filmward.pipeline.MendedText;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Rows in quarantine, and submitting them again. */
final class QuarantineResource {
  private static final int MOST_ROWS = 500;

  private final Plant plant;

  QuarantineResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    long id = Requests.id(ctx);
    HeldFile held = plant.quarantine(id, MOST_ROWS);
    long all = plant.store().read(tables -> tables.files().quarantinedRows(id));
    ctx.json(HeldJson.of(held, plant.zone()).put("more", all - held.rows().size()));
  }

  void mend(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    List<MendedText> texts = new ArrayList<>();
    for (JsonNode row : body.path("rows")) {
      if (!row.path("row").canConvertToLong()) {
        throw new IllegalArgumentException("\"row\" is the id of a row in quarantine");
      }
      texts.add(new MendedText(row.path("row").asLong(), row.path("text").asText("")));
    }
    if (texts.isEmpty()) {
      throw new IllegalArgumentException("\"rows\" names no row to submit again");
    }
    MendReport report = plant.mend(Requests.id(ctx), texts, Requests.by(ctx, body));
    ObjectNode file =
        report.file().map(entry -> FileJson.of(entry, plant.zone())).orElseGet(Wire::object);
    ctx.json(HeldJson.of(report, file));
  }
}
