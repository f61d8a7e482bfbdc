package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import dev.filmward.film.Structures;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.StructurePreview.Entry;
import dev.filmward.pipeline.StructurePreview.State;
import dev.filmward.store.StructureTable.Given;
import dev.filmward.store.StructureTable.KeptFile;
import dev.filmward.store.StructureTable.StoredFile;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Where people describe films: the structures with their versions, what a file would change, and
 * the way back. What was judged before a version stays as it was judged. Thread-safe.
 */
public final class StructureDesk {
  private final Plant plant;
  private final StructureBook book;

  public StructureDesk(Plant plant) {
    this.plant = plant;
    this.book = plant.structureBook();
  }

  /**
   * What a person says about a file.
   *
   * @param holdsFrom later than now; empty for from now on
   * @param seen the newest file that the person knew of, 0 for none; empty where nobody looked
   */
  public record Word(String by, String reason, Optional<Instant> holdsFrom, Optional<Long> seen) {}

  /** All of them, in the order in which they were first given. */
  public List<KnownStructure> all() {
    return known(book.files());
  }

  /** The newest file, 0 where there is none. */
  public long newest() {
    return newest(book.files());
  }

  /**
   * What a file would change; nothing is kept.
   *
   * @throws StructuresFault saying all that is wrong with it
   */
  public StructurePreview preview(String name, byte[] yaml) throws StructuresFault {
    Structures read = StructureBook.read(name, yaml);
    List<KnownStructure> known = all();
    List<Entry> entries = new ArrayList<>();
    for (Structure structure : read.all()) {
      entries.add(
          find(known, structure.code())
              .map(before -> entry(before, structure))
              .orElseGet(() -> new Entry(structure, State.NEW, List.of(), 0, false)));
    }
    return new StructurePreview(entries, StructureYaml.of(read.all()));
  }

  private static Entry entry(KnownStructure before, Structure structure) {
    List<StructureChange> changes = StructureDiff.between(before.shown().structure(), structure);
    State state = changes.isEmpty() ? State.SAME : State.CHANGED;
    return new Entry(
        structure, state, changes, before.samples(), before.isMadeOtherwiseThan(structure));
  }

  /**
   * Keeps a file.
   *
   * @throws StructuresFault saying all that is wrong with it
   * @throws IllegalArgumentException if it should hold from a moment that is over
   * @throws IllegalStateException if readings so far have another number of layers, or somebody
   *     gave another file since
   */
  public void keep(String name, byte[] yaml, Word word) throws StructuresFault {
    Instant now = plant.clock().instant();
    if (word.holdsFrom().isPresent() && !word.holdsFrom().get().isAfter(now)) {
      throw new IllegalArgumentException(
          "a version holds from now on or from a later moment; what was judged before "
              + now
              + " stays as it was judged");
    }
    refuseOtherLayers(preview(name, yaml));
    StoredFile file = new StoredFile(name, new String(yaml, StandardCharsets.UTF_8));
    Given given = new Given(now, word.by(), word.reason(), word.holdsFrom(), OptionalLong.empty());
    book.keep(
        file,
        given,
        files -> {
          refuseUnseen(word.seen(), files);
          return word.holdsFrom().isEmpty() && book.tookHoldLast(file, files);
        });
  }

  private static void refuseOtherLayers(StructurePreview preview) {
    for (Entry entry : preview.entries()) {
      if (entry.otherLayers()) {
        throw new IllegalStateException(
            entry.samples()
                + " samples of "
                + entry.structure().code()
                + " were read with another number of reported layers; give the other film a code"
                + " of its own");
      }
    }
  }

  private static void refuseUnseen(Optional<Long> seen, List<KeptFile> files) {
    if (seen.isPresent() && seen.get() != newest(files)) {
      KeptFile last = files.get(files.size() - 1);
      throw new IllegalStateException(
          last.given().by() + " gave \"" + last.file().name() + "\" in the meantime");
    }
  }

  /**
   * Takes the newest version of a structure back: the version before becomes a new one, from now on
   * or from the moment of the one that was planned.
   *
   * @throws NoSuchElementException if there is no such structure
   * @throws IllegalStateException if it is not the newest version, the first, or a day old
   */
  public void takeBack(String code, int number, String by, String reason) {
    Instant now = plant.clock().instant();
    List<KeptFile> seen = book.files();
    KnownStructure known =
        find(known(seen), code)
            .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
    if (!known.takeBack().equals(Optional.of(number))) {
      throw new IllegalStateException(
          "version "
              + number
              + " of "
              + code
              + " cannot be taken back any more: only the newest one can, for a day, where there"
              + " is one before it");
    }
    StructureVersion undone = known.newest();
    StructureVersion before = known.versions().get(number - 2);
    Optional<Instant> from = undone.file().given().holdsFrom().filter(now::isBefore);
    Given given = new Given(now, by, reason, from, OptionalLong.of(undone.file().id()));
    String name = code + ", version " + before.number() + " again";
    book.keep(
        new StoredFile(name, StructureYaml.of(before.structure())),
        given,
        files -> {
          refuseUnseen(Optional.of(newest(seen)), files);
          return false;
        });
  }

  private List<KnownStructure> known(List<KeptFile> files) {
    return plant
        .store()
        .read(
            tables ->
                StructureHistory.of(
                    files, tables.samples().productions(), plant.clock().instant()));
  }

  private static Optional<KnownStructure> find(List<KnownStructure> known, String code) {
    return known.stream().filter(each -> each.code().equals(code)).findFirst();
  }

  private static long newest(List<KeptFile> files) {
    return files.isEmpty() ? 0 : files.get(files.size() - 1).id();
  }
}
