package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** What follows where the echoes of a layer do not stand apart. Stateless. */
final class ResolutionRemark {
  private ResolutionRemark() {}

  static List<Remark> of(List<ExpectedLayer> layers) {
    List<Remark> remarks = new ArrayList<>();
    String unresolved = which(layers, Resolution.NOT_RESOLVED, Resolution.Limits::leastUm);
    if (!unresolved.isEmpty()) {
      remarks.add(
          Remark.wrong(
              Remark.GAUGE,
              "cannot be resolved at this frequency, since below an eighth of the wavelength only the"
                  + " size of the echo follows the thickness: %s. Take a higher frequency, or report"
                  + " them with a neighbour.",
              unresolved));
    }
    String fitted = which(layers, Resolution.FITTED, Resolution.Limits::resolvedFromUm);
    if (!fitted.isEmpty()) {
      remarks.add(
          Remark.note(
              Remark.GAUGE,
              "echoes overlap, so it takes a fitted model and timing is less certain: %s.",
              fitted));
    }
    return remarks;
  }

  /** The layers that are so, each with the thickness from which it would not be. */
  private static String which(
      List<ExpectedLayer> layers, Resolution resolution, ToDoubleFunction<Resolution.Limits> from) {
    List<String> names = new ArrayList<>();
    for (ExpectedLayer layer : layers) {
      layer
          .sound()
          .filter(sound -> sound.resolution() == resolution)
          .map(sound -> from.applyAsDouble(sound.limits()))
          .ifPresent(um -> names.add(name(layer, um)));
    }
    return String.join(", ", names);
  }

  private static String name(ExpectedLayer layer, double fromUm) {
    return String.format(
        Locale.ROOT,
        "%s (%.1f um; from %.1f um on)",
        layer.layer().name(),
        layer.nominalUm().orElseThrow(),
        fromUm);
  }
}
