package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.StructuresFile;
import dev.filmward.store.Store;
import dev.filmward.store.StructureTable.StoredFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The structures that the plant knows: of two with the same code the one that was given later.
 * Thread-safe.
 */
final class StructureBook {
  private final Store store;
  private final Clock clock;
  private volatile Structures current;

  StructureBook(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.current = read(store.read(tables -> tables.structures().all()));
  }

  Structures current() {
    return current;
  }

  /** Reads a structures file and keeps it, if it is without fault. */
  synchronized void add(String name, byte[] yaml, String by) throws StructuresFault {
    read(name, yaml);
    StoredFile file = new StoredFile(name, new String(yaml, StandardCharsets.UTF_8));
    List<StoredFile> all =
        store.write(
            tables -> {
              if (tables.structures().add(file, clock.instant())) {
                tables.audit().add(Audited.structures(file, by, clock.instant()));
              }
              return tables.structures().all();
            });
    current = read(all);
  }

  static Structures read(List<StoredFile> files) {
    Map<String, Structure> byCode = new LinkedHashMap<>();
    for (StoredFile file : files) {
      for (Structure structure : readKept(file).all()) {
        byCode.put(structure.code(), structure);
      }
    }
    return new Structures(byCode.values());
  }

  private static Structures readKept(StoredFile file) {
    try {
      return read(file.name(), file.yaml().getBytes(StandardCharsets.UTF_8));
    } catch (StructuresFault e) {
      throw new IllegalStateException(
          "the structures file " + file.name() + " was kept, but cannot be read any more", e);
    }
  }

  private static Structures read(String name, byte[] yaml) throws StructuresFault {
    try {
      return StructuresFile.read(new ByteArrayInputStream(yaml), name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
