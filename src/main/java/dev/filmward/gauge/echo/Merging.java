package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;

/** Which layers to report as one, so that no boundary is asked for that nobody sees. Stateless. */
final class Merging {
  private Merging() {}

  /** Names of layers, a list for each that would be reported. */
  static List<List<String>> proposal(List<ExpectedLayer> layers, List<ExpectedEcho> echoes) {
    List<List<String>> groups = new ArrayList<>();
    List<ExpectedEcho> between =
        echoes.stream().filter(echo -> echo.place() == ExpectedEcho.Place.REPORTED).toList();
    for (int i = 0; i < layers.size(); i++) {
      if (i == 0 || between.get(i - 1).sight() != ExpectedEcho.Sight.UNSEEN) {
        groups.add(new ArrayList<>());
      }
      layers.get(i).members().stream()
          .map(member -> member.layer().name())
          .forEach(groups.get(groups.size() - 1)::add);
    }
    return groups.stream().map(List::copyOf).toList();
  }
}
