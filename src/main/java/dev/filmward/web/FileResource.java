package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FileEntry;
import dev.filmward.store.QuarantinedRow;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.NoSuchElementException;

/** Files of readings: those that came, their rows in quarantine, and new ones. */
final class FileResource {
  private static final int MOST_FILES = 200;
  private static final int MOST_ROWS = 500;
  static final long LARGEST_UPLOAD = 2L << 30;
  private static final long LARGEST_STRUCTURES = 4L << 20;

  private final Plant plant;

  FileResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode files = answer.putArray("files");
    plant.store().read(tables -> tables.files().newest(MOST_FILES)).stream()
        .map(this::json)
        .forEach(files::add);
    ctx.json(answer);
  }

  void quarantine(Context ctx) {
    long id = Requests.id(ctx);
    ObjectNode answer = Wire.object();
    ArrayNode rows = answer.putArray("rows");
    long all =
        plant
            .store()
            .read(
                tables -> {
                  if (tables.files().find(id).isEmpty()) {
                    throw new NoSuchElementException("no file " + id);
                  }
                  List<QuarantinedRow> found = tables.files().quarantined(id, MOST_ROWS);
                  found.forEach(row -> rows.add(json(row)));
                  return tables.files().quarantinedRows(id);
                });
    answer.put("more", all - rows.size());
    ctx.json(answer);
  }

  /** Streams the body to disk before it is read, so that a broken connection leaves nothing. */
  void upload(Context ctx) throws IOException {
    String name = Requests.text(ctx, "name");
    Path file = Files.createTempFile("filmward-upload", ".csv");
    try {
      try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST_UPLOAD)) {
        Files.copy(body, file, StandardCopyOption.REPLACE_EXISTING);
      }
      FileEntry entry =
          plant.read(new IncomingFile(name, "upload", () -> Files.newInputStream(file)));
      ctx.json(json(entry));
    } finally {
      Files.deleteIfExists(file);
    }
  }

  void learnStructures(Context ctx) throws IOException, StructuresFault {
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST_STRUCTURES)) {
      plant.learnStructures(Requests.text(ctx, "name"), body.readAllBytes());
    }
    ObjectNode answer = Wire.object();
    ArrayNode codes = answer.putArray("structures");
    plant.structures().all().forEach(structure -> codes.add(structure.code()));
    ctx.json(answer);
  }

  private ObjectNode json(FileEntry entry) {
    ObjectNode node =
        Wire.object()
            .put("id", entry.id())
            .put("name", entry.name())
            .put("source", entry.source())
            .put("receivedAt", Wire.time(entry.receivedAt(), plant.zone()))
            .put("rows", entry.counts().rows())
            .put("readings", entry.counts().readings())
            .put("missing", entry.counts().missing())
            .put("quarantined", entry.counts().quarantined())
            .put("new", entry.counts().arrivals().fresh())
            .put("known", entry.counts().arrivals().known())
            .put("corrected", entry.counts().arrivals().corrected())
            .put("refusal", entry.refusal().orElse(null));
    ArrayNode notes = node.putArray("notes");
    entry.notes().lines().forEach(notes::add);
    return node;
  }

  private static ObjectNode json(QuarantinedRow row) {
    return Wire.object()
        .put("line", row.line())
        .put("column", row.column())
        .put("value", row.value())
        .put("reason", row.reason())
        .put("raw", row.raw())
        .put("readings", row.readings());
  }
}
