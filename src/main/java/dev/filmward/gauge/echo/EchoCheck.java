package dev.filmward.gauge.echo;

import dev.filmward.film.Structure;
import java.util.List;
import java.util.Optional;

/**
 * Works out what echoes a structure gives before a gauge. What is not known (a resin, a target) is
 * left empty and asked for; nothing is guessed. Stateless.
 */
public final class EchoCheck {
  private EchoCheck() {}

  public static EchoPlan of(Structure structure, Setup setup) {
    List<ExpectedLayer> layers =
        GaugedLayer.of(structure).stream()
            .map(layer -> ExpectedLayer.of(layer, setup.gauge()))
            .toList();
    List<ExpectedEcho> echoes = echoes(layers, setup);
    return new EchoPlan(
        structure,
        setup,
        layers,
        echoes,
        Merging.proposal(layers, echoes),
        SetupRemarks.of(setup, layers, echoes));
  }

  private static List<ExpectedEcho> echoes(List<ExpectedLayer> layers, Setup setup) {
    EchoTrain train = new EchoTrain(setup.couplant());
    for (ExpectedLayer layer : layers) {
      ExpectedEcho.Place place =
          train.isEmpty() ? ExpectedEcho.Place.FRONT : ExpectedEcho.Place.REPORTED;
      for (LayerSound member : layer.members()) {
        train.meet(place, member.layer().name(), member.medium());
        place = ExpectedEcho.Place.WITHIN;
      }
    }
    train.meet(
        ExpectedEcho.Place.BACK, setup.backing().name(), Optional.of(setup.backing().medium()));
    return train.echoes();
  }
}
