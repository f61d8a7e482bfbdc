package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.List;

/**
 * Works the figures of stored samples out again, because something that they follow from was
 * decided afterwards. Readings stay as they are; of a sample whose readings were thinned, the
 * figures stay too. Whoever calls this has the alarms judged again from the span's beginning on.
 * Within one transaction, for one thread.
 */
final class Refiguring {
  private static final int SAMPLES_AT_ONCE = 500;

  private final Tables tables;
  private final Charted charted;
  private final List<Stored> waiting = new ArrayList<>();
  private long refigured;

  Refiguring(Tables tables) {
    this.tables = tables;
    this.charted = Charted.asKept(tables);
  }

  /** Refigures what a line made of a structure in a span, and gives how many samples that were. */
  long run(Production production, Span span) {
    List<Stored> all = new ArrayList<>();
    tables.samples().within(production.line(), production.structure().code(), span, all::add);
    for (Stored stored : all) {
      take(stored, production.structure());
    }
    write(production.structure());
    return refigured;
  }

  /** Refigures some samples of a structure. */
  long run(List<Stored> some, Structure structure) {
    some.forEach(stored -> take(stored, structure));
    write(structure);
    return refigured;
  }

  private void take(Stored stored, Structure structure) {
    if (stored.isThinned()) {
      return;
    }
    waiting.add(stored);
    if (waiting.size() >= SAMPLES_AT_ONCE) {
      write(structure);
    }
  }

  private void write(Structure structure) {
    if (!waiting.isEmpty()) {
      tables.samples().refigure(waiting, (Sample exported) -> charted.figures(exported, structure));
      refigured += waiting.size();
      waiting.clear();
    }
  }
}
