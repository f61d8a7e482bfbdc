package dev.filmward.subgroup;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes a sample, gives a subgroup for each characteristic of its structure.
 *
 * <p>The total of a lane is the sum of its layers, where all of them were measured; the share of a
 * layer is its part of that total. A characteristic that was measured nowhere has no subgroup.
 * Stateless but for a scratch array: one per thread.
 */
public final class Subgrouping {
  private final Structure structure;
  private final List<Characteristic> characteristics;
  private double[] scratch = new double[16];

  private Subgrouping(Structure structure, List<Characteristic> characteristics) {
    this.structure = structure;
    this.characteristics = List.copyOf(characteristics);
  }

  /** Every reported layer, then the total. */
  public static Subgrouping layersAndTotal(Structure structure) {
    List<Characteristic> list = new ArrayList<>();
    structure.reported().forEach(layer -> list.add(Characteristic.layer(layer)));
    list.add(Characteristic.total());
    return new Subgrouping(structure, list);
  }

  /** Every reported layer, the total, then every layer's share of the total. */
  public static Subgrouping withShares(Structure structure) {
    List<Characteristic> list = new ArrayList<>(layersAndTotal(structure).characteristics);
    structure.reported().forEach(layer -> list.add(Characteristic.share(layer)));
    return new Subgrouping(structure, list);
  }

  /** In the order in which {@link #of} fills its answer. */
  public List<Characteristic> characteristics() {
    return characteristics;
  }

  /**
   * Sums up the characteristic at an index, the same as of the draft's sample; a size of 0 where
   * nothing was measured. Sorts the lanes of the draft.
   */
  public void sum(SampleDraft draft, int index, SubgroupSum into) {
    draft.sortLanes();
    if (scratch.length < draft.laneCount()) {
      scratch = new double[draft.laneCount()];
    }
    Characteristic characteristic = characteristics.get(index);
    int size = 0;
    for (int lane = 0; lane < draft.laneCount(); lane++) {
      double value = value(draft, lane, characteristic);
      scratch[size] = value;
      size += Double.isNaN(value) ? 0 : 1;
    }
    into.take(scratch, size);
  }

  private static double value(SampleDraft draft, int lane, Characteristic characteristic) {
    return switch (characteristic.kind()) {
      case LAYER -> draft.umOrNaN(characteristic.position() - 1, lane);
      case TOTAL -> totalOrNaN(draft, lane);
      case SHARE -> draft.umOrNaN(characteristic.position() - 1, lane) / totalOrNaN(draft, lane);
    };
  }

  private static double totalOrNaN(SampleDraft draft, int lane) {
    double sum = 0;
    for (int layer = 0; layer < draft.layers(); layer++) {
      sum += draft.umOrNaN(layer, lane);
    }
    return sum;
  }

  /** The subgroup of one characteristic. */
  public Optional<Subgroup> of(Sample sample, Characteristic characteristic) {
    if (scratch.length < sample.laneCount()) {
      scratch = new double[sample.laneCount()];
    }
    int size =
        switch (characteristic.kind()) {
          case LAYER -> collectLayer(sample, characteristic.position());
          case TOTAL -> collectTotals(sample);
          case SHARE -> collectShares(sample, characteristic.position());
        };
    return size == 0 ? Optional.empty() : Optional.of(Subgroup.of(scratch, size));
  }

  private int collectLayer(Sample sample, int position) {
    int size = 0;
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      if (sample.isMeasured(position, lane)) {
        scratch[size++] = sample.thicknessUm(position, lane);
      }
    }
    return size;
  }

  private int collectTotals(Sample sample) {
    int size = 0;
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      if (isWhole(sample, lane)) {
        scratch[size++] = total(sample, lane);
      }
    }
    return size;
  }

  private int collectShares(Sample sample, int position) {
    int size = 0;
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      if (isWhole(sample, lane)) {
        scratch[size++] = sample.thicknessUm(position, lane) / total(sample, lane);
      }
    }
    return size;
  }

  private boolean isWhole(Sample sample, int lane) {
    for (int position = 1; position <= structure.reported().size(); position++) {
      if (!sample.isMeasured(position, lane)) {
        return false;
      }
    }
    return true;
  }

  private double total(Sample sample, int lane) {
    double sum = 0;
    for (int position = 1; position <= structure.reported().size(); position++) {
      sum += sample.thicknessUm(position, lane);
    }
    return sum;
  }
}
