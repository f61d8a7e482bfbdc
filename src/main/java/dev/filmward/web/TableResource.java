package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.report.paper.TableBook;
import dev.filmward.report.paper.TableBook.Entry;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A table that a page shows, as a workbook. */
final class TableResource {
  private static final long LARGEST = 5_000_000;
  private static final String XLSX =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

  private TableResource() {}

  static void workbook(Context ctx) throws IOException {
    JsonNode body;
    try (InputStream in = new BoundedStream(ctx.bodyInputStream(), LARGEST)) {
      body = Wire.mapper().readTree(in);
    }
    List<String> heads = new ArrayList<>();
    Requests.array(body, "heads").forEach(head -> heads.add(head.asText()));
    List<List<Entry>> rows = new ArrayList<>();
    for (JsonNode row : Requests.array(body, "rows")) {
      List<Entry> entries = new ArrayList<>();
      row.forEach(cell -> entries.add(entry(cell)));
      rows.add(entries);
    }
    ctx.contentType(XLSX).result(TableBook.of(heads, rows));
  }

  private static Entry entry(JsonNode cell) {
    return new Entry(
        cell.asText(),
        cell.isNumber() ? OptionalDouble.of(cell.asDouble()) : OptionalDouble.empty());
  }
}
