package dev.filmward.diagnosis;

import dev.filmward.diagnosis.Direction.Family;
import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * All ways in which the layers of a structure can move together, by the mass balance {@code t = Q /
 * (rho W v)}. Immutable.
 */
final class Directions {
  private final List<ReportedLayer> reported;
  private final double[] usualUm;
  private final List<Direction> all = new ArrayList<>();
  private final List<Direction> sources;
  private final List<Direction> resins;

  Directions(Structure structure, double[] usualUm) {
    this.reported = structure.reported();
    this.usualUm = usualUm;
    double[] ones = IntStream.range(0, usualUm.length).mapToDouble(i -> 1).toArray();
    all.add(new Direction(Family.COMMON, ones, List.of()));
    for (int i = 0; i < usualUm.length; i++) {
      all.add(single(i));
    }
    List<double[]> extruders = groups(Layer::extruder);
    extruders.stream()
        .filter(this::isSeveralButNotAll)
        .forEach(moves -> all.add(new Direction(Family.EXTRUDER, moves, positions(moves))));
    List<double[]> sameResin = groups(Layer::resin);
    sameResin.stream()
        .filter(this::isSeveralButNotAll)
        .forEach(moves -> all.add(new Direction(Family.RESIN, moves, positions(moves))));
    sources = ways(Family.EXTRUDER, extruders);
    resins = ways(Family.RESIN, sameResin);
    addLayerTrades();
    addExtruderTrades(extruders);
    addSkins();
  }

  List<Direction> all() {
    return all;
  }

  /** One for each extruder, also where it feeds a single layer; without extruders each layer. */
  List<Direction> sources() {
    return sources;
  }

  /** One for each resin, also where a single layer has it; without resins each layer. */
  List<Direction> resins() {
    return resins;
  }

  private List<Direction> ways(Family family, List<double[]> groups) {
    List<double[]> some =
        groups.stream().filter(moves -> positions(moves).size() < moves.length).toList();
    if (some.isEmpty()) {
      return IntStream.range(0, usualUm.length).mapToObj(this::single).toList();
    }
    return some.stream().map(moves -> new Direction(family, moves, positions(moves))).toList();
  }

  private Direction single(int i) {
    double[] moves = new double[usualUm.length];
    moves[i] = 1;
    return new Direction(Family.ONE_LAYER, moves, List.of(i + 1));
  }

  private boolean isSeveralButNotAll(double[] moves) {
    long moved = IntStream.range(0, moves.length).filter(i -> moves[i] > 0.5).count();
    return moved >= 2 && moved < moves.length;
  }

  private static List<Integer> positions(double[] moves) {
    return IntStream.range(0, moves.length)
        .filter(i -> moves[i] != 0)
        .mapToObj(i -> i + 1)
        .toList();
  }

  /** By a property of layers: which part of each reported layer has the same one. */
  private List<double[]> groups(Function<Layer, Optional<String>> property) {
    TreeMap<String, double[]> groups = new TreeMap<>();
    for (int i = 0; i < usualUm.length; i++) {
      double all = 0;
      for (Layer layer : reported.get(i).members()) {
        all += layer.individual().target().orElse(1);
      }
      for (Layer layer : reported.get(i).members()) {
        Optional<String> name = property.apply(layer);
        if (name.isPresent()) {
          groups.computeIfAbsent(name.get(), any -> new double[usualUm.length])[i] +=
              layer.individual().target().orElse(1) / all;
        }
      }
    }
    return List.copyOf(groups.values());
  }

  private void addLayerTrades() {
    for (int j = 0; j < usualUm.length; j++) {
      for (int k = j + 1; k < usualUm.length; k++) {
        trade(Family.TRADE_MASS, single(j).moves(), single(k).moves()).ifPresent(all::add);
        if (k == j + 1) {
          trade(Family.TRADE_TIME_OF_FLIGHT, single(j).moves(), single(k).moves())
              .ifPresent(all::add);
        }
      }
    }
  }

  private void addExtruderTrades(List<double[]> extruders) {
    for (int a = 0; a < extruders.size(); a++) {
      for (int b = a + 1; b < extruders.size(); b++) {
        if (isSeveral(extruders.get(a)) || isSeveral(extruders.get(b))) {
          trade(Family.TRADE_MASS, extruders.get(a), extruders.get(b)).ifPresent(all::add);
        }
      }
    }
  }

  private static boolean isSeveral(double[] moves) {
    return positions(moves).size() > 1;
  }

  /** Two groups that trade so that the sum over all layers stays. */
  private Optional<Direction> trade(Family family, double[] up, double[] down) {
    double gained = sum(family, up);
    double lost = sum(family, down);
    if (Double.isNaN(gained) || Double.isNaN(lost)) {
      return Optional.empty();
    }
    double[] moves = new double[usualUm.length];
    double size = Math.min(gained, lost);
    for (int i = 0; i < moves.length; i++) {
      moves[i] = size * (up[i] / gained - down[i] / lost);
    }
    return Optional.of(new Direction(family, moves, positions(moves)));
  }

  private double sum(Family family, double[] moves) {
    double sum = 0;
    for (int i = 0; i < moves.length; i++) {
      if (moves[i] != 0) {
        sum += moves[i] * usualUm[i] * per(family, i);
      }
    }
    return sum;
  }

  /** What a micrometre of a layer counts: mass or time; NaN where it is not known. */
  private double per(Family family, int i) {
    return family == Family.TRADE_TIME_OF_FLIGHT
        ? slowness(reported.get(i)).orElse(Double.NaN)
        : density(reported.get(i)).orElse(Double.NaN);
  }

  private void addSkins() {
    ReportedLayer first = reported.get(0);
    ReportedLayer last = reported.get(usualUm.length - 1);
    if (usualUm.length < 3
        || !isAlike(first.members().get(0), last.members().get(last.members().size() - 1))) {
      return;
    }
    trade(Family.TRADE_MASS, single(0).moves(), single(usualUm.length - 1).moves())
        .ifPresent(trade -> all.add(new Direction(Family.SKINS, trade.moves(), trade.positions())));
  }

  private static boolean isAlike(Layer first, Layer last) {
    return (first.extruder().isPresent() && first.extruder().equals(last.extruder()))
        || (first.resin().isPresent() && first.resin().equals(last.resin()));
  }

  /** In g/cm3, of a reported layer; empty where a member has none. */
  static OptionalDouble density(ReportedLayer layer) {
    return weighed(layer, Layer::densityGcm3, density -> density);
  }

  /** Nanoseconds there and back for a micrometre, as the gauge is set. */
  static OptionalDouble slowness(ReportedLayer layer) {
    return weighed(layer, Layer::velocityMps, velocity -> 2000 / velocity);
  }

  private static OptionalDouble weighed(
      ReportedLayer layer, Function<Layer, OptionalDouble> property, DoubleUnaryOperator per) {
    double all = 0;
    double sum = 0;
    for (Layer member : layer.members()) {
      OptionalDouble value = property.apply(member);
      if (value.isEmpty()) {
        return OptionalDouble.empty();
      }
      double um = member.individual().target().orElse(1);
      all += um;
      sum += um * per.applyAsDouble(value.getAsDouble());
    }
    return OptionalDouble.of(sum / all);
  }
}
