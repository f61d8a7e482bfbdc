package dev.filmward.gauge.echo;

import java.util.Optional;

/** What follows where the echoes of a layer do not stand apart. Stateless. */
final class ResolutionRemark {
  private ResolutionRemark() {}

  static Optional<Remark> of(ExpectedLayer layer) {
    return layer.sound().flatMap(sound -> of(layer, sound));
  }

  private static Optional<Remark> of(ExpectedLayer layer, ExpectedLayer.Sound sound) {
    double nominal = layer.nominalUm().orElseThrow();
    String name = layer.layer().name();
    return switch (sound.resolution()) {
      case RESOLVED -> Optional.empty();
      case FITTED ->
          Optional.of(
              Remark.note(
                  name,
                  "%.1f um is below the %.1f um from which echoes stand apart: it takes a fitted model,"
                      + " and its timing is less certain.",
                  nominal,
                  sound.limits().resolvedFromUm()));
      case NOT_RESOLVED ->
          Optional.of(
              Remark.wrong(
                  name,
                  "%.1f um cannot be resolved at this frequency: below %.1f um, an eighth of the"
                      + " wavelength, only the size of the echo follows the thickness. Take a higher"
                      + " frequency, or report it with a neighbour.",
                  nominal,
                  sound.limits().leastUm()));
    };
  }
}
