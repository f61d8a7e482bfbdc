package dev.filmward.gauge.screen;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Looks whether the samples of a structure were misread, by comparing two kinds of explanation in
 * times of flight: that the film is so, and that a gauge read it in one of the ways of {@link
 * Misread}. A misreading is certain only where it explains a sample better by {@value
 * GrossScan#CERTAIN} natural logarithms of odds, that is, 22 000 times.
 *
 * <p>A sample all of whose readings are there and within 12 % of their targets is looked at for
 * copied values alone. Samples with another number of layers are not screened. Readings in um;
 * frequency in MHz. Thread-safe. Sources: the patterns follow from t = c tau / 2 and the order of
 * echoes; which sizes count as a process is common practice, no source.
 */
public final class Screen {
  /** Changes when the same samples may get other flags. */
  public static final int RULE_VERSION = 1;

  private static final double ORDINARY = 0.12;

  private final HeardFilm film;
  private final GrossScan gross;
  private final Usual targets;
  private final double[] leastUm;
  private final double[] mostUm;

  /**
   * @param others structures that the film might be instead
   */
  public Screen(Structure structure, Collection<Structure> others) {
    film = new HeardFilm(structure);
    gross =
        new GrossScan(
            film,
            others.stream()
                .filter(other -> !other.code().equals(structure.code()))
                .map(HeardFilm::new)
                .filter(OtherFilm::isComparable)
                .toList());
    targets = Usual.ofTargets(film);
    leastUm =
        positions().mapToDouble(position -> (1 - ORDINARY) * film.targetUm(position)).toArray();
    mostUm =
        positions()
            .mapToDouble(
                position ->
                    Math.min(
                        (1 + ORDINARY) * film.targetUm(position), 0.99 * film.greatestUm(position)))
            .toArray();
  }

  /** Begins with no samples. */
  public RecentSamples recent() {
    return new RecentSamples(this);
  }

  /**
   * What looks misread in a sample; in the order of kinds, then of layers.
   *
   * @param recent the samples before it
   * @param gaugeMhz the gauge's frequency, where known
   */
  public List<Flag> flags(Sample sample, RecentSamples recent, OptionalDouble gaugeMhz) {
    if (!isScreened(sample)) {
      return List.of();
    }
    HeardSample heard = heard(sample);
    List<Flag> flags = new ArrayList<>(new CopyScan(heard, recent).flags());
    if (!isOrdinary(sample) || BlankScan.isShort(heard, recent)) {
      flags.addAll(looked(heard, recent, gaugeMhz));
    }
    if (flags.isEmpty()) {
      return flags;
    }
    MeanShift shift = new MeanShift(film, heard, recent.usual());
    return flags.stream()
        .map(flag -> flag.with(shift.effect(flag)))
        .sorted(
            Comparator.comparing(Flag::kind)
                .thenComparing(flag -> flag.positions().get(0))
                .thenComparing(flag -> flag.lanes().get(0)))
        .toList();
  }

  private List<Flag> looked(HeardSample heard, RecentSamples recent, OptionalDouble gaugeMhz) {
    Usual usual = recent.usual();
    List<Flag> flags = new ArrayList<>();
    if (usual.isKnown()) {
      flags.addAll(gross.flags(heard, usual));
      if (flags.stream().noneMatch(flag -> flag.strength() == Flag.Strength.CERTAIN)) {
        List<Flag> subtle = subtle(heard, recent, gaugeMhz);
        flags = subtle.isEmpty() ? flags : subtle;
      }
    }
    flags.addAll(new BlankScan(heard, recent).flags(flags));
    return flags;
  }

  private List<Flag> subtle(HeardSample heard, RecentSamples recent, OptionalDouble gaugeMhz) {
    Usual usual = recent.usual();
    List<Flag> flags = new ArrayList<>(new CouplantScan(film, heard, usual).flags());
    if (flags.isEmpty() && usual.isSettled()) {
      flags.addAll(new TradeScan(film, heard, recent).flags());
      if (flags.isEmpty() && gaugeMhz.isPresent()) {
        flags.addAll(new CycleScan(film, heard, usual).flags(gaugeMhz.getAsDouble()));
      }
    }
    return flags;
  }

  /** Whether there are readings of all that the structure reports. */
  boolean isScreened(Sample sample) {
    return sample.layers() == film.layers() && sample.laneCount() > 0;
  }

  HeardFilm film() {
    return film;
  }

  HeardSample heard(Sample sample) {
    return new HeardSample(film, sample);
  }

  /** Whether a sample by itself, compared with the targets, is not surely misread. */
  boolean isPlausible(HeardSample heard) {
    return isOrdinary(heard.sample())
        || !targets.isKnown()
        || gross.flags(heard, targets).stream()
            .noneMatch(flag -> flag.strength() == Flag.Strength.CERTAIN);
  }

  /** False where there is no target to compare with. */
  private boolean isOrdinary(Sample sample) {
    for (int position = 1; position <= leastUm.length; position++) {
      double least = leastUm[position - 1];
      double most = mostUm[position - 1];
      for (int lane = 0; lane < sample.laneCount(); lane++) {
        if (!sample.isMeasured(position, lane)) {
          return false;
        }
        double um = sample.thicknessUm(position, lane);
        if (!(um > least && um < most)) {
          return false;
        }
      }
    }
    return true;
  }

  private IntStream positions() {
    return IntStream.rangeClosed(1, film.layers());
  }
}
