package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.LongWork;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Sender;
import io.javalin.http.Context;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.CancellationException;

/** Files of readings: those that came, and new ones. */
final class FileResource {
  private static final int MOST_FILES = 200;
  static final long LARGEST_UPLOAD = 2L << 30;

  /** Longer files go through the disk. */
  private static final int IN_MEMORY = 64 << 10;

  private final Plant plant;

  FileResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode files = answer.putArray("files");
    plant.store().read(tables -> tables.files().newest(MOST_FILES)).stream()
        .map(entry -> FileJson.of(entry, plant.zone()))
        .forEach(files::add);
    ctx.json(answer);
  }

  /** The whole body comes before it is read, so that a broken connection leaves nothing. */
  void upload(Context ctx) throws IOException {
    String name = Requests.text(ctx, "name");
    Sender sender = Sender.of(Requests.by(ctx), Requests.textOr(ctx, "why", ""));
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST_UPLOAD)) {
      byte[] first = body.readNBytes(IN_MEMORY);
      FileEntry entry =
          first.length < IN_MEMORY
              ? read(name, sender, () -> new ByteArrayInputStream(first))
              : readFromDisk(
                  name, sender, new SequenceInputStream(new ByteArrayInputStream(first), body));
      ctx.json(FileJson.of(entry, plant.zone()));
    }
  }

  private FileEntry readFromDisk(String name, Sender sender, InputStream body) throws IOException {
    Path file = Files.createTempFile("filmward-upload", ".csv");
    try {
      Files.copy(body, file, StandardCopyOption.REPLACE_EXISTING);
      LongWork work = LongWork.current();
      work.more(Files.size(file));
      return read(name, sender, () -> new WatchedStream(Files.newInputStream(file), work));
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private FileEntry read(String name, Sender sender, IncomingFile.Opener opener) {
    FileEntry entry = plant.read(new IncomingFile(name, "upload", opener).from(sender));
    if (LongWork.current().isCancelled()) {
      entry.refusal().ifPresent(FileResource::cancelled);
    }
    return entry;
  }

  private static void cancelled(String what) {
    throw new CancellationException(what);
  }
}
