package dev.filmward.gauge.echo;

import dev.filmward.film.ReportedLayer;
import dev.filmward.gauge.Gauge;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A reported layer as one gauge meets it. Immutable.
 *
 * @param sound how it looks to the gauge; empty where its thickness or a velocity is not known
 */
public record ExpectedLayer(GaugedLayer gauged, Optional<Sound> sound) {

  /**
   * What the gauge's pulse makes of it.
   *
   * @param wavelengthUm at the centre frequency; m/s over MHz are um
   */
  public record Sound(double wavelengthUm, Resolution.Limits limits, Resolution resolution) {}

  static ExpectedLayer of(GaugedLayer layer, Gauge gauge) {
    return new ExpectedLayer(
        layer,
        layer.flightNs().isPresent()
            ? Optional.of(
                sound(layer.nominalUm().orElseThrow(), layer.velocityMps().orElseThrow(), gauge))
            : Optional.empty());
  }

  private static Sound sound(double thicknessUm, double velocityMps, Gauge gauge) {
    Resolution.Limits limits = Resolution.Limits.of(velocityMps, gauge);
    return new Sound(velocityMps / gauge.centreMhz(), limits, limits.of(thicknessUm));
  }

  public ReportedLayer layer() {
    return gauged.layer();
  }

  public List<LayerSound> members() {
    return gauged.members();
  }

  public OptionalDouble nominalUm() {
    return gauged.nominalUm();
  }
}
