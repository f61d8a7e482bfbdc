package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.pipeline.StructureVersion.Standing;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.StructureTable.KeptFile;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Structures files, oldest first -> each structure with its versions. One owner, one thread. */
final class StructureHistory {
  /** So long a version can be taken back by one step; later a new one says more. */
  private static final Duration TAKE_BACK = Duration.ofHours(24);

  private final Instant now;
  private final StructureTimeline timeline;
  private final Map<String, List<StructureVersion>> versions = new LinkedHashMap<>();
  private final Map<String, Long> inForce = new LinkedHashMap<>();
  private final Set<Long> planned = new HashSet<>();

  private StructureHistory(List<KeptFile> files, Instant now) {
    this.now = now;
    this.timeline = StructureTimeline.at(files, now);
    timeline.planned().forEach(file -> planned.add(file.id()));
  }

  static List<KnownStructure> of(List<KeptFile> files, List<Production> made, Instant now) {
    StructureHistory history = new StructureHistory(files, now);
    history.findInForce();
    files.forEach(history::add);
    return history.known(made);
  }

  private void findInForce() {
    for (KeptFile file : timeline.taken()) {
      StructureBook.readKept(file.file())
          .all()
          .forEach(structure -> inForce.put(structure.code(), file.id()));
    }
  }

  private void add(KeptFile file) {
    for (Structure structure : StructureBook.readKept(file.file()).all()) {
      List<StructureVersion> own =
          versions.computeIfAbsent(structure.code(), code -> new ArrayList<>());
      if (own.isEmpty()) {
        own.add(new StructureVersion(1, standing(file, structure), structure, file, List.of()));
      } else {
        addAfter(own.get(own.size() - 1), structure, file, own);
      }
    }
  }

  /** A file that says the same again is no version, but may be the one that holds. */
  private void addAfter(
      StructureVersion last, Structure structure, KeptFile file, List<StructureVersion> own) {
    boolean isPlanned =
        last.file().given().holdsFrom().isPresent() || file.given().holdsFrom().isPresent();
    List<StructureChange> changes = StructureDiff.between(last.structure(), structure);
    Standing standing = standing(file, structure);
    if (isPlanned || !changes.isEmpty()) {
      own.add(new StructureVersion(last.number() + 1, standing, structure, file, changes));
    } else if (standing == Standing.IN_FORCE) {
      own.set(
          own.size() - 1,
          new StructureVersion(last.number(), standing, structure, last.file(), last.changes()));
    }
  }

  private Standing standing(KeptFile file, Structure structure) {
    if (planned.contains(file.id())) {
      return Standing.PLANNED;
    }
    boolean holds = inForce.getOrDefault(structure.code(), -1L) == file.id();
    return holds ? Standing.IN_FORCE : Standing.PAST;
  }

  private List<KnownStructure> known(List<Production> made) {
    List<KnownStructure> known = new ArrayList<>();
    versions.forEach(
        (code, own) -> {
          List<Production> here =
              made.stream().filter(each -> each.structure().equals(code)).toList();
          known.add(new KnownStructure(code, own, here, takeBack(own)));
        });
    return known;
  }

  /** The newest version, while it is young and there is one to go back to. */
  private Optional<Integer> takeBack(List<StructureVersion> own) {
    StructureVersion newest = own.get(own.size() - 1);
    Instant until = newest.file().given().receivedAt().plus(TAKE_BACK);
    boolean may = newest.number() > 1 && !newest.changes().isEmpty() && now.isBefore(until);
    return may ? Optional.of(newest.number()) : Optional.empty();
  }
}
