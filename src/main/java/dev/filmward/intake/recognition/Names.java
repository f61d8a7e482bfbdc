package dev.filmward.intake.recognition;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What headings and cells may name: words of the trade, and the layers of known structures. */
record Names(Structures structures) {

  /** Whether a heading says something to us. */
  boolean isKnown(String heading) {
    HeadingParts parts = HeadingParts.of(heading);
    return parts.unit().isPresent()
        || Vocabulary.role(parts.text()).isPresent()
        || Vocabulary.layerNumber(parts.text()).isPresent()
        || Vocabulary.laneNumber(parts.text()).isPresent()
        || layer(parts.text()).isPresent();
  }

  /** The reported layer of some structure that a text names, as it is written there. */
  Optional<String> layer(String text) {
    String plain = Vocabulary.plain(text);
    return layers().stream().filter(name -> Vocabulary.plain(name).equals(plain)).findFirst();
  }

  /** Names of all reported layers. */
  Set<String> layers() {
    Set<String> names = new LinkedHashSet<>();
    for (Structure structure : structures.all()) {
      structure.reported().stream().map(ReportedLayer::name).forEach(names::add);
    }
    return names;
  }

  List<String> codes() {
    return structures.all().stream().map(Structure::code).toList();
  }

  /** The code that a text stands for: itself, or that of the structure with such a name. */
  Optional<String> code(String text) {
    String plain = Vocabulary.plain(text);
    Collection<Structure> all = structures.all();
    return all.stream()
        .filter(s -> s.code().equals(text))
        .findFirst()
        .or(
            () ->
                all.stream()
                    .filter(
                        s ->
                            Vocabulary.plain(s.code()).equals(plain)
                                || Vocabulary.plain(s.name()).equals(plain))
                    .findFirst())
        .map(Structure::code);
  }
}
