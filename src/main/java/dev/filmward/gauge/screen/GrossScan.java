package dev.filmward.gauge.screen;

import dev.filmward.gauge.screen.Flag.Effect;
import dev.filmward.gauge.screen.Flag.Strength;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Finds misreadings that put layers in the wrong places or scale all of them: each lane by itself,
 * and the sample as a whole. Thread-safe.
 */
final class GrossScan {
  /** By so much, in natural logarithms of odds, a misreading must explain readings better. */
  static final double CERTAIN = 10;

  private static final double LIKELY = 6;

  /** What must be left unexplained at most. */
  private static final double FITS = 9;

  private final HeardFilm film;
  private final double[] greatestNs;
  private final List<Misreading> ofLanes = new ArrayList<>();
  private final List<Misreading> ofSamples;

  GrossScan(HeardFilm film, List<HeardFilm> others) {
    this.film = film;
    int layers = film.layers();
    greatestNs =
        IntStream.rangeClosed(1, layers)
            .mapToDouble(position -> film.ns(position, film.greatestUm(position)))
            .toArray();
    ofLanes.addAll(BoundaryLost.all(layers));
    ofLanes.addAll(BoundaryBlank.all(layers));
    ofLanes.addAll(DoubleTrigger.all(layers));
    ofSamples =
        Stream.concat(
                WholeSample.all(layers), others.stream().map(other -> new OtherFilm(layers, other)))
            .toList();
  }

  /** A misreading that fits, and by how much it explains better than the process. */
  private record Best(Misreading misreading, double surprise, double gain) {
    private Strength strength() {
      return gain > CERTAIN && surprise < FITS ? Strength.CERTAIN : Strength.LIKELY;
    }
  }

  List<Flag> flags(HeardSample heard, Usual usual) {
    List<Integer> lanes = heard.lanesRead();
    if (lanes.isEmpty()) {
      return List.of();
    }
    Weighing whole = whole(heard, usual, lanes);
    Map<Integer, Weighing> byLane = new TreeMap<>();
    lanes.forEach(lane -> byLane.put(lane, lane(heard, usual, lane)));
    if (whole.asProcess() < LIKELY
        && byLane.values().stream().allMatch(weighing -> weighing.asProcess() < LIKELY)) {
      return List.of();
    }
    Evidence evidence = new Evidence(film, heard, usual);
    Optional<Best> ofSample = best(whole, ofSamples);
    Optional<Best> ofAllLanes = best(whole, ofLanes);
    if (ofSample.isPresent() && isBetter(ofSample.get(), ofAllLanes)) {
      return List.of(flag(ofSample.get().misreading, ofSample.get().strength(), lanes, evidence));
    }
    List<Flag> flags = laneByLane(byLane, ofAllLanes, evidence);
    return flags.isEmpty()
        ? ofAllLanes.stream()
            .map(best -> flag(best.misreading, best.strength(), lanes, evidence))
            .toList()
        : flags;
  }

  private static boolean isBetter(Best ofSample, Optional<Best> ofAllLanes) {
    return ofAllLanes.map(other -> ofSample.surprise < other.surprise).orElse(true);
  }

  private List<Flag> laneByLane(
      Map<Integer, Weighing> byLane, Optional<Best> ofAllLanes, Evidence evidence) {
    Map<Misreading, List<Integer>> found = new LinkedHashMap<>();
    Map<Misreading, Double> greatestGain = new LinkedHashMap<>();
    byLane.forEach(
        (lane, weighing) ->
            best(weighing, ofLanes)
                .ifPresent(
                    best -> {
                      found.computeIfAbsent(best.misreading, any -> new ArrayList<>()).add(lane);
                      double gain = best.strength() == Strength.CERTAIN ? best.gain : 0;
                      greatestGain.merge(best.misreading, gain, Math::max);
                    }));
    List<Flag> flags = new ArrayList<>();
    found.forEach(
        (misreading, lanes) -> {
          boolean isCertain =
              greatestGain.getOrDefault(misreading, 0.0) > CERTAIN
                  || ofAllLanes
                      .filter(all -> all.misreading.equals(misreading))
                      .filter(all -> all.strength() == Strength.CERTAIN)
                      .isPresent();
          Strength strength = isCertain ? Strength.CERTAIN : Strength.LIKELY;
          flags.add(flag(misreading, strength, lanes, evidence));
        });
    return flags;
  }

  private static Flag flag(
      Misreading misreading, Strength strength, List<Integer> lanes, Evidence evidence) {
    return new Flag(
        misreading.kind(),
        misreading.positions(),
        evidence.numbers(lanes),
        strength,
        Effect.SPOILS_THE_MEAN,
        misreading.words() + ": " + evidence.readAndUsual(lanes));
  }

  private static Optional<Best> best(Weighing weighing, List<Misreading> misreadings) {
    double process = weighing.asProcess();
    if (process < LIKELY) {
      return Optional.empty();
    }
    Optional<Best> best = Optional.empty();
    for (Misreading misreading : misreadings) {
      double surprise = weighing.as(misreading);
      if (process - surprise > LIKELY && (best.isEmpty() || surprise < best.get().surprise)) {
        best = Optional.of(new Best(misreading, surprise, process - surprise));
      }
    }
    return best;
  }

  private Weighing lane(HeardSample heard, Usual usual, int lane) {
    return new Weighing(
        heard.nsAt(lane), usual.nsAt(heard.sample().lane(lane)), usual.noises(), greatestNs, 1);
  }

  /** The sample's middle: of each layer the median of lanes, blank where half of them are. */
  private Weighing whole(HeardSample heard, Usual usual, List<Integer> lanes) {
    int layers = heard.layers();
    double[] read = new double[layers];
    double[] usualNs = new double[layers];
    double[] noise = usual.noises();
    for (int i = 0; i < layers; i++) {
      double[] ratios = new double[lanes.size()];
      int count = 0;
      for (int lane : lanes) {
        double ns = heard.ns(i + 1, lane);
        if (!Double.isNaN(ns)) {
          ratios[count++] = ns / usual.ns(i + 1, heard.sample().lane(lane));
        }
      }
      usualNs[i] = usual.layerNs(i + 1);
      read[i] = 2 * count > lanes.size() ? usualNs[i] * Middle.of(ratios, count) : Double.NaN;
      noise[i] /= Math.sqrt(Math.max(1, count));
    }
    return new Weighing(read, usualNs, noise, greatestNs, lanes.size());
  }
}
