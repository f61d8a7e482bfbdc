package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.store.FileEntry;
import java.time.ZoneId;

/** A file that came, as JSON. */
final class FileJson {
  private FileJson() {}

  static ObjectNode of(FileEntry entry, ZoneId zone) {
    ObjectNode node =
        Wire.object()
            .put("id", entry.id())
            .put("name", entry.name())
            .put("source", entry.source())
            .put("by", entry.sender().by())
            .put("why", entry.sender().why())
            .put("receivedAt", Wire.time(entry.receivedAt(), zone))
            .put("rows", entry.counts().rows())
            .put("readings", entry.counts().readings())
            .put("missing", entry.counts().missing())
            .put("quarantined", entry.counts().quarantined())
            .put("mended", entry.mended())
            .put("new", entry.counts().arrivals().fresh())
            .put("known", entry.counts().arrivals().known())
            .put("corrected", entry.counts().arrivals().corrected())
            .put("refusal", entry.refusal().orElse(null));
    ArrayNode notes = node.putArray("notes");
    entry.notes().lines().forEach(notes::add);
    return node;
  }
}
