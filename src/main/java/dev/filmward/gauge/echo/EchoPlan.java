package dev.filmward.gauge.echo;

import dev.filmward.film.Structure;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The echoes to expect of a film, and what to look at before they are believed. Immutable.
 *
 * @param echoes of all boundaries in the order in which they come, the front first
 * @param proposal the names of the layers of each reported layer, if boundaries too weak to see
 *     were reported as one; as they are now where there are none
 */
public record EchoPlan(
    Structure structure,
    Setup setup,
    List<ExpectedLayer> layers,
    List<ExpectedEcho> echoes,
    List<List<String>> proposal,
    List<Remark> remarks) {

  /** What goes with every plan. */
  public static final String GUIDANCE =
      "This is what plane waves at a right angle to flat, even layers would do. Absorption, spreading,"
          + " rough or curled film and the gauge's own filters are not in it: take it as guidance, not"
          + " as a promise, and look at the echoes.";

  public EchoPlan {
    layers = List.copyOf(layers);
    echoes = List.copyOf(echoes);
    proposal = List.copyOf(proposal);
    remarks = List.copyOf(remarks);
  }

  /**
   * The signs of the echoes that end the reported layers, outer first, such as {@code + - -}: into
   * the barrier, out of it, back wall. The front echo is not in it; one too weak to see stands in
   * brackets.
   */
  public String polarities() {
    return echoes.stream()
        .filter(echo -> echo.place() != ExpectedEcho.Place.FRONT)
        .filter(echo -> echo.place() != ExpectedEcho.Place.WITHIN)
        .map(EchoPlan::sign)
        .collect(Collectors.joining(" "));
  }

  private static String sign(ExpectedEcho echo) {
    String sign = echo.polarity().sign();
    return echo.sight() == ExpectedEcho.Sight.UNSEEN ? "(" + sign + ")" : sign;
  }

  /** Whether the proposal differs from how layers are reported now. */
  public boolean hasProposal() {
    return proposal.size() != layers.size();
  }
}
