package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.SampleTable;
import dev.filmward.store.SampleTable.Change;
import dev.filmward.store.SampleTable.Correction;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes samples into the store, joined to what is there, and counts what the readings were to it.
 * Within one transaction, for one thread.
 */
final class SampleWriter {
  private final SampleTable samples;
  private final Origin origin;
  private final Charted charted;
  private long fresh;
  private long known;
  private long corrected;
  private long thinned;

  SampleWriter(Tables tables, Origin origin) {
    this.samples = tables.samples();
    this.charted = Charted.asKept(tables);
    this.origin = origin;
  }

  /** A sample, or a part of one, as a file gave it. */
  record Came(Sample sample, Structure structure) {}

  /** Writes samples, and gives those that this changed, as they are kept now. */
  List<Came> write(List<Came> all) {
    Map<SampleKey, Joining> joinings = new LinkedHashMap<>();
    Map<SampleKey, Stored> kept =
        samples.known(all.stream().map(came -> came.sample.key()).toList());
    for (Came came : all) {
      SampleKey key = came.sample.key();
      joinings
          .computeIfAbsent(key, any -> new Joining(Optional.ofNullable(kept.get(key))))
          .add(came);
    }
    List<Joining> changed = joinings.values().stream().filter(Joining::isChanged).toList();
    samples.write(changed.stream().map(this::change).toList(), origin);
    return changed.stream().map(Joining::now).toList();
  }

  Arrivals arrivals() {
    return new Arrivals(fresh, known, corrected);
  }

  /** Readings among those known that came again for a sample that has none to compare with. */
  long thinned() {
    return thinned;
  }

  private Change change(Joining joining) {
    Came now = joining.now();
    return new Change(
        joining.before,
        now.sample,
        charted.figures(now.sample, now.structure),
        joining.corrections);
  }

  /** What was kept of one sample, with all parts of it that come in one transaction. */
  private final class Joining {
    private final Optional<Stored> before;
    private final List<Correction> corrections = new ArrayList<>();
    private Optional<Came> now = Optional.empty();

    private Joining(Optional<Stored> before) {
      this.before = before;
    }

    private void add(Came came) {
      if (isThinned()) {
        known += came.sample.readings();
        thinned += came.sample.readings();
        return;
      }
      Optional<Sample> kept = now.map(Came::sample).or(() -> before.map(Stored::sample));
      if (kept.isEmpty()) {
        fresh += came.sample.readings();
        now = Optional.of(came);
        return;
      }
      SampleMerge merge = new SampleMerge(kept.get(), came.sample);
      fresh += merge.fresh();
      known += merge.known();
      corrected += merge.corrections().size();
      corrections.addAll(merge.corrections());
      corrections.addAll(merge.temperatures());
      now = Optional.of(new Came(merge.merged(), came.structure));
    }

    private boolean isThinned() {
      return before.map(Stored::isThinned).orElse(false);
    }

    private boolean isChanged() {
      return !isThinned() && isOther();
    }

    private boolean isOther() {
      return before.map(stored -> !stored.sample().equals(now().sample)).orElse(true)
          || !corrections.isEmpty();
    }

    private Came now() {
      return now.orElseThrow();
    }
  }
}
