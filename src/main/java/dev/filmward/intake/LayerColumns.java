package dev.filmward.intake;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Decides which columns of a wide file hold the thickness of which layer.
 *
 * <p>A length in brackets whose name is close to a layer's, or names only a part of a reported
 * layer, is refused, since to ignore it would lose a layer in silence; any other name is of some
 * other length, and ignored.
 */
final class LayerColumns {
  private static final int GREATEST_POSITION = 4096;

  private final String where;
  private final List<Heading> headings;
  private final Set<String> reported = new LinkedHashSet<>();
  private final Set<String> members = new LinkedHashSet<>();

  LayerColumns(String where, List<Heading> headings, Structures structures) {
    this.where = where;
    this.headings = headings;
    for (Structure structure : structures.all()) {
      structure.reported().stream().map(ReportedLayer::name).forEach(reported::add);
      structure.layers().stream().map(Layer::name).forEach(members::add);
    }
    members.removeAll(reported);
  }

  List<Column> plan() throws FileRefused {
    List<Column> columns = new ArrayList<>();
    for (Heading heading : headings) {
      column(heading).ifPresent(columns::add);
    }
    if (columns.isEmpty()) {
      throw new FileRefused(
          where
              + "no column holds a thickness; head it thickness_um, or head a column for each layer"
              + " layer_1_um, layer_2_um and so on, or with the layer's name and the unit in"
              + " brackets");
    }
    refuseMixture(columns);
    refuseSecond(columns);
    return columns;
  }

  private Optional<Column> column(Heading heading) throws FileRefused {
    if (heading.meaning() instanceof Meaning.LayerAt at) {
      return Optional.of(at(heading, at));
    }
    if (heading.meaning() instanceof Meaning.LayerNamed named) {
      return named(heading, named.name());
    }
    return Optional.empty();
  }

  private Column at(Heading heading, Meaning.LayerAt at) throws FileRefused {
    int position = at.position().length() > 6 ? 0 : Integer.parseInt(at.position());
    if (position < 1 || position > GREATEST_POSITION) {
      throw new FileRefused(
          where
              + Words.quoted(heading.text())
              + " is no layer; layers are numbered from 1, the outer face inwards");
    }
    return heading
        .layerAt(position)
        .orElseThrow(() -> new FileRefused(where + heading.withoutUnit()));
  }

  private Optional<Column> named(Heading heading, String name) throws FileRefused {
    boolean isReported = reported.stream().anyMatch(name::equalsIgnoreCase);
    Optional<Column> column = heading.layerNamed(name);
    if (isReported) {
      return Optional.of(column.orElseThrow(() -> new FileRefused(where + heading.withoutUnit())));
    }
    if (column.isPresent()) {
      refuseNearly(heading, name);
    }
    return Optional.empty();
  }

  private void refuseNearly(Heading heading, String name) throws FileRefused {
    if (members.stream().anyMatch(name::equalsIgnoreCase)) {
      throw new FileRefused(
          where
              + Words.quoted(heading.text())
              + " is a layer that no known structure reports by itself; head the column with the"
              + " reported layer: "
              + Words.some(reported));
    }
    Optional<String> nearest = Nearest.to(name, reported);
    if (nearest.isPresent()) {
      throw new FileRefused(
          where
              + Words.quoted(heading.text())
              + " names no known layer; the nearest is "
              + Words.quoted(nearest.get()));
    }
  }

  private void refuseMixture(List<Column> columns) throws FileRefused {
    long named = columns.stream().filter(column -> column.layer().isPresent()).count();
    if (named > 0 && named < columns.size()) {
      throw new FileRefused(
          where
              + "some layer columns are headed by position and some by name; head all of them the"
              + " same way");
    }
  }

  private void refuseSecond(List<Column> columns) throws FileRefused {
    Set<String> seen = new LinkedHashSet<>();
    for (Column column : columns) {
      String layer = column.layer().orElseGet(() -> "layer " + column.position().orElseThrow());
      if (!seen.add(layer.toLowerCase(Locale.ROOT))) {
        throw new FileRefused(
            where + "two columns are of " + Words.quoted(layer) + "; leave one of them out");
      }
    }
  }
}
