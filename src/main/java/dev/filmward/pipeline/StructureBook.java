package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.StructuresFile;
import dev.filmward.store.Store;
import dev.filmward.store.StructureTable.Given;
import dev.filmward.store.StructureTable.KeptFile;
import dev.filmward.store.StructureTable.StoredFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * The structures that the plant knows: of two with the same code the one that was given later, once
 * its moment has come. Thread-safe.
 */
final class StructureBook {
  private final Store store;
  private final Clock clock;
  private final Consumer<Set<String>> changed;
  private final Set<String> untold = ConcurrentHashMap.newKeySet();
  private volatile Shown shown;

  /** What holds, until the moment of another. */
  private record Shown(
      Structures structures, Map<String, StructureTimes> times, Optional<Instant> until) {
    boolean holdsAt(Instant now) {
      return until.isEmpty() || now.isBefore(until.get());
    }
  }

  /**
   * Opens the book.
   *
   * @param changed hears the codes of those of which another version holds from now on
   */
  StructureBook(Store store, Clock clock, Consumer<Set<String>> changed) {
    this.store = store;
    this.clock = clock;
    this.changed = changed;
    this.shown = shown(files());
  }

  Structures current() {
    return shown().structures();
  }

  /** The versions of a structure by their time. */
  StructureTimes times(Structure structure) {
    StructureTimes times = shown().times().get(structure.code());
    return times == null ? StructureTimes.always(structure) : times;
  }

  private Shown shown() {
    Shown now = shown;
    return now.holdsAt(clock.instant()) ? now : renewed();
  }

  private synchronized Shown renewed() {
    if (!shown.holdsAt(clock.instant())) {
      show(files());
    }
    return shown;
  }

  /** Shows what follows from these files, and notes what is another now. */
  private void show(List<KeptFile> files) {
    Structures before = shown.structures();
    shown = shown(files);
    shown.structures().all().stream()
        .filter(now -> before.find(now.code()).filter(now::equals).isEmpty())
        .map(Structure::code)
        .forEach(untold::add);
  }

  /** Tells of versions that took hold since this was done last; never within a transaction. */
  void tell() {
    current();
    Set<String> codes = new HashSet<>();
    untold.removeIf(codes::add);
    if (!codes.isEmpty()) {
      changed.accept(codes);
    }
  }

  /** All files as they were given, oldest first. */
  List<KeptFile> files() {
    return store.read(tables -> tables.structures().all());
  }

  /**
   * Reads a structures file and keeps it, if it is without fault and not the one that took hold
   * last.
   */
  void add(String name, byte[] yaml, String by) throws StructuresFault {
    read(name, yaml);
    StoredFile file = new StoredFile(name, new String(yaml, StandardCharsets.UTF_8));
    keep(file, Given.at(clock.instant(), by), files -> tookHoldLast(file, files));
  }

  /**
   * The same at a start, where the file is often that of the start before: what was kept once under
   * that name does not take the place of what people decided since.
   */
  void addAtStart(String name, byte[] yaml, String by) throws StructuresFault {
    read(name, yaml);
    StoredFile file = new StoredFile(name, new String(yaml, StandardCharsets.UTF_8));
    keep(
        file,
        Given.at(clock.instant(), by),
        files ->
            isLast(file, files.stream().filter(kept -> kept.file().name().equals(name)).toList()));
  }

  /** Looks at what was kept so far and says whether there is nothing to do. */
  interface Look {
    boolean isEnough(List<KeptFile> files);
  }

  /** Keeps a file that can be read, unless a look at those so far says that it need not be. */
  void keep(StoredFile file, Given given, Look look) {
    add(file, given, look);
    tell();
  }

  private synchronized void add(StoredFile file, Given given, Look look) {
    List<KeptFile> all =
        store.write(
            tables -> {
              if (!look.isEnough(tables.structures().all())) {
                tables.structures().add(file, given);
                tables.audit().add(Audited.structures(file, given));
              }
              return tables.structures().all();
            });
    show(all);
  }

  /** Whether a file is the one that took hold last, so that giving it again changes nothing. */
  boolean tookHoldLast(StoredFile file, List<KeptFile> files) {
    return isLast(file, StructureTimeline.at(files, clock.instant()).taken());
  }

  private static boolean isLast(StoredFile file, List<KeptFile> files) {
    return !files.isEmpty() && files.get(files.size() - 1).file().equals(file);
  }

  private Shown shown(List<KeptFile> files) {
    StructureTimeline timeline = StructureTimeline.at(files, clock.instant());
    return new Shown(read(timeline.taken()), StructureTimes.of(timeline.taken()), timeline.next());
  }

  static Structures read(List<KeptFile> inTheirOrder) {
    Map<String, Structure> byCode = new LinkedHashMap<>();
    for (KeptFile file : inTheirOrder) {
      for (Structure structure : readKept(file.file()).all()) {
        byCode.put(structure.code(), structure);
      }
    }
    return new Structures(byCode.values());
  }

  static Structures readKept(StoredFile file) {
    try {
      return read(file.name(), file.yaml().getBytes(StandardCharsets.UTF_8));
    } catch (StructuresFault e) {
      throw new IllegalStateException(
          "the structures file " + file.name() + " was kept, but cannot be read any more", e);
    }
  }

  static Structures read(String name, byte[] yaml) throws StructuresFault {
    try {
      return StructuresFile.read(new ByteArrayInputStream(yaml), name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
