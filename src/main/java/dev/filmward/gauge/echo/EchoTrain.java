package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Follows a pulse from medium to medium and notes the echo of each boundary. Behind a medium that
 * is not known no strength is told any more. Mutable, for one thread.
 */
final class EchoTrain {
  private final List<ExpectedEcho> echoes = new ArrayList<>();
  private String name;
  private Optional<Medium> here;
  private OptionalDouble left = OptionalDouble.of(1);

  EchoTrain(Resin from) {
    this.name = from.name();
    this.here = Optional.of(from.medium());
  }

  boolean isEmpty() {
    return echoes.isEmpty();
  }

  /** The pulse meets the next medium. */
  void meet(ExpectedEcho.Place place, String nextName, Optional<Medium> next) {
    Optional<Reflection> reflection =
        here.flatMap(before -> next.map(behind -> Reflection.between(before, behind)));
    OptionalDouble strength =
        reflection.isPresent() && left.isPresent()
            ? OptionalDouble.of(left.getAsDouble() * reflection.get().coefficient())
            : OptionalDouble.empty();
    echoes.add(new ExpectedEcho(place, name, nextName, echoes.size(), reflection, strength));
    left =
        strength.isPresent()
            ? OptionalDouble.of(left.getAsDouble() * reflection.orElseThrow().thereAndBack())
            : OptionalDouble.empty();
    name = nextName;
    here = next;
  }

  List<ExpectedEcho> echoes() {
    return List.copyOf(echoes);
  }
}
