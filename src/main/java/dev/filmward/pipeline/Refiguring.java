package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Piece;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
  private long left;

  Refiguring(Tables tables) {
    this.tables = tables;
    this.charted = Charted.asKept(tables);
  }

  /**
   * Refigures what a line made of a structure in a span, a piece at a time, and gives how many
   * samples that were.
   */
  long run(Production production, Span span) {
    Optional<Sample> last = Optional.empty();
    List<Stored> piece = next(production, span, last);
    while (!piece.isEmpty()) {
      LongWork.current().goOn();
      run(piece, production.structure());
      last = Optional.of(piece.get(piece.size() - 1).sample());
      piece = piece.size() < SAMPLES_AT_ONCE ? List.of() : next(production, span, last);
    }
    return refigured;
  }

  private List<Stored> next(Production production, Span span, Optional<Sample> after) {
    String structure = production.structure().code();
    return tables
        .samples()
        .next(span, new Piece(production.line(), structure, after, SAMPLES_AT_ONCE));
  }

  /** Refigures some samples of a structure. */
  long run(List<Stored> some, Structure structure) {
    some.forEach(stored -> take(stored, structure));
    write(structure);
    return refigured;
  }

  /** How many samples it passed over, since they have no readings any more. */
  long left() {
    return left;
  }

  private void take(Stored stored, Structure structure) {
    if (stored.isThinned()) {
      left++;
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
      LongWork.current().did(waiting.size());
      waiting.clear();
    }
  }
}
