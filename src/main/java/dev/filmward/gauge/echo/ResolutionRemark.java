package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What follows where the echoes of a layer do not stand apart. Stateless. */
final class ResolutionRemark {
  private ResolutionRemark() {}

  static List<Remark> of(List<ExpectedLayer> layers) {
    List<Remark> remarks = new ArrayList<>();
    List<String> fitted = new ArrayList<>();
    for (ExpectedLayer layer : layers) {
      switch (layer.sound().map(ExpectedLayer.Sound::resolution).orElse(Resolution.RESOLVED)) {
        case RESOLVED -> {}
        case FITTED -> fitted.add(words(layer, layer.sound().orElseThrow()));
        case NOT_RESOLVED -> remarks.add(unresolved(layer, layer.sound().orElseThrow()));
      }
    }
    if (!fitted.isEmpty()) {
      remarks.add(
          Remark.note(
              Remark.GAUGE,
              "echoes overlap, so it takes a fitted model and timing is less certain: %s.",
              String.join(", ", fitted)));
    }
    return remarks;
  }

  private static String words(ExpectedLayer layer, ExpectedLayer.Sound sound) {
    return String.format(
        Locale.ROOT,
        "%s (%.1f um; resolved from %.1f um)",
        layer.layer().name(),
        layer.nominalUm().orElseThrow(),
        sound.limits().resolvedFromUm());
  }

  private static Remark unresolved(ExpectedLayer layer, ExpectedLayer.Sound sound) {
    return Remark.wrong(
        layer.layer().name(),
        "%.1f um cannot be resolved at this frequency: below %.1f um, an eighth of the wavelength, only"
            + " the size of the echo follows the thickness. Take a higher frequency, or report it with"
            + " a neighbour.",
        layer.nominalUm().orElseThrow(),
        sound.limits().leastUm());
  }
}
