package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.SampleTable;
import dev.filmward.store.SampleTable.Figures;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.SampleDraft;
import dev.filmward.subgroup.Subgrouping;
import java.util.ArrayList;
import java.util.HashMap;
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
  private final Map<Structure, Subgrouping> subgroupings = new HashMap<>();
  private long fresh;
  private long known;
  private long corrected;

  SampleWriter(Tables tables, Origin origin) {
    this.samples = tables.samples();
    this.origin = origin;
  }

  /** Writes a sample, and gives it as it is kept now where that changed anything. */
  Optional<Sample> write(SampleDraft draft) {
    Sample came = draft.toSample();
    Optional<Stored> kept = samples.find(came.key());
    if (kept.isEmpty()) {
      fresh += came.readings();
      samples.insert(came, origin, figures(came, draft.structure()));
      return Optional.of(came);
    }
    return join(kept.get(), came, draft.structure());
  }

  Arrivals arrivals() {
    return new Arrivals(fresh, known, corrected);
  }

  private Optional<Sample> join(Stored kept, Sample came, Structure structure) {
    SampleMerge merge = new SampleMerge(kept.sample(), came);
    fresh += merge.fresh();
    known += merge.known();
    corrected += merge.corrections().size();
    if (merge.merged().equals(kept.sample())) {
      return Optional.empty();
    }
    samples.correct(kept.id(), merge.corrections(), origin);
    samples.update(kept.id(), merge.merged(), figures(merge.merged(), structure));
    return Optional.of(merge.merged());
  }

  private List<Figures> figures(Sample sample, Structure structure) {
    Subgrouping subgrouping = subgroupings.computeIfAbsent(structure, Subgrouping::layersAndTotal);
    List<Figures> figures = new ArrayList<>();
    for (var characteristic : subgrouping.characteristics()) {
      figures.add(new Figures(characteristic.position(), subgrouping.of(sample, characteristic)));
    }
    return figures;
  }
}
