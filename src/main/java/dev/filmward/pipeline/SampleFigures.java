package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.subgroup.SampleDraft;
import dev.filmward.subgroup.SubgroupSum;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Samples summed up one after the other, in arrays that are used again after {@link #clear}: of
 * each the size, mean, range and sum of squares of all its subgroups. One owner, one thread at a
 * time.
 */
final class SampleFigures {
  /** Mean, range and sum of squares. */
  static final int FIGURES = 3;

  private final AnalysisScope scope;
  private final List<Batch> batches = new ArrayList<>();
  private final SubgroupSum sum = new SubgroupSum();
  private int count;
  private int[] batchOf = new int[1024];
  private SampleKey[] keys = new SampleKey[1024];
  private Instant[] takenAt = new Instant[1024];
  private int[] firstSubgroup = new int[1024];
  private int subgroups;
  private int[] sizes = new int[1 << 13];
  private double[] figures = new double[FIGURES << 13];

  SampleFigures(AnalysisScope scope) {
    this.scope = scope;
  }

  /** What samples of one line and structure share. */
  private record Batch(String line, Structure structure, Subgrouping subgrouping) {
    boolean holds(SampleDraft draft) {
      return structure.code().equals(draft.key().structure()) && line.equals(draft.key().line());
    }
  }

  /** Sums a sample up; nothing of the draft is kept but its key. */
  void add(SampleDraft draft) {
    if (count == keys.length) {
      growSamples();
    }
    int batch = batch(draft);
    Subgrouping subgrouping = batches.get(batch).subgrouping();
    batchOf[count] = batch;
    keys[count] = draft.key();
    takenAt[count] = draft.takenAt();
    firstSubgroup[count] = subgroups;
    count++;
    for (int i = 0; i < subgrouping.characteristics().size(); i++) {
      subgrouping.sum(draft, i, sum);
      add(sum);
    }
  }

  private void add(SubgroupSum subgroup) {
    if (subgroups == sizes.length) {
      sizes = Arrays.copyOf(sizes, 2 * subgroups);
      figures = Arrays.copyOf(figures, 2 * FIGURES * subgroups);
    }
    boolean isThere = subgroup.size() > 0;
    int at = subgroups * FIGURES;
    figures[at] = isThere ? subgroup.mean() : 0;
    figures[at + 1] = isThere ? subgroup.range() : 0;
    figures[at + 2] = isThere ? subgroup.sumOfSquares() : 0;
    sizes[subgroups++] = subgroup.size();
  }

  int count() {
    return count;
  }

  SampleKey key(int sample) {
    return keys[sample];
  }

  Structure structure(int sample) {
    return batches.get(batchOf[sample]).structure();
  }

  Instant takenAt(int sample) {
    return takenAt[sample];
  }

  /** Where the subgroups of a sample begin, one for each of its characteristics. */
  int firstSubgroup(int sample) {
    return firstSubgroup[sample];
  }

  int size(int subgroup) {
    return sizes[subgroup];
  }

  double mean(int subgroup) {
    return figures[subgroup * FIGURES];
  }

  double range(int subgroup) {
    return figures[subgroup * FIGURES + 1];
  }

  double sumOfSquares(int subgroup) {
    return figures[subgroup * FIGURES + 2];
  }

  void clear() {
    Arrays.fill(keys, 0, count, null);
    Arrays.fill(takenAt, 0, count, null);
    count = 0;
    subgroups = 0;
  }

  private int batch(SampleDraft draft) {
    for (int i = batches.size() - 1; i >= 0; i--) {
      if (batches.get(i).holds(draft)) {
        return i;
      }
    }
    Structure structure = draft.structure();
    batches.add(new Batch(draft.key().line(), structure, scope.charted().apply(structure)));
    return batches.size() - 1;
  }

  private void growSamples() {
    int more = 2 * count;
    batchOf = Arrays.copyOf(batchOf, more);
    keys = Arrays.copyOf(keys, more);
    takenAt = Arrays.copyOf(takenAt, more);
    firstSubgroup = Arrays.copyOf(firstSubgroup, more);
  }
}
