package dev.filmward.rule.price;

import dev.filmward.rule.SignalTest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The states that the tests of a mean chart can be in before they signal, and the ways between
 * them. A state is what the tests remember and the zone of the last point; from it a point leads to
 * another state by its zone and, within the zone of the last point, by whether it is higher or
 * lower. Immutable once made.
 */
final class TestChain {
  /** In the place of a state where a test signals. */
  static final int SIGNAL = -1;

  private record State(ZoneMemory zones, OrderMemory order, int zone) {}

  /** Where a state leads to: by zone; higher and lower within its own zone. */
  record Ways(int zone, List<Integer> byZone, int higher, int lower) {}

  private final Set<SignalTest> tests;
  private final Zones zones;
  private final Map<State, Integer> numbers = new HashMap<>();
  private final List<State> states = new ArrayList<>();
  private final List<Ways> ways = new ArrayList<>();
  private final int[] first;

  TestChain(Set<SignalTest> tests, Zones zones) {
    this.tests = tests;
    this.zones = zones;
    first = new int[zones.count()];
    for (int zone = 0; zone < first.length; zone++) {
      first[zone] = number(ZoneMemory.EMPTY, Optional.of(OrderMemory.EMPTY), zone);
    }
    // the list grows as ways lead to states not met before
    for (int i = 0; i < states.size(); i++) {
      ways.add(waysFrom(states.get(i)));
    }
  }

  int states() {
    return states.size();
  }

  Ways ways(int state) {
    return ways.get(state);
  }

  /** The state after the first point, by its zone. */
  int first(int zone) {
    return first[zone];
  }

  private Ways waysFrom(State state) {
    Optional<OrderMemory> up = step(state.order, 1);
    Optional<OrderMemory> down = step(state.order, -1);
    List<Integer> byZone = new ArrayList<>();
    for (int zone = 0; zone < zones.count(); zone++) {
      byZone.add(number(state.zones, zone > state.zone ? up : down, zone));
    }
    int own = state.zone;
    return new Ways(
        own, List.copyOf(byZone), number(state.zones, up, own), number(state.zones, down, own));
  }

  private Optional<OrderMemory> step(OrderMemory order, int direction) {
    return OrderMemory.isNeeded(tests) ? order.after(direction, tests) : Optional.of(order);
  }

  private int number(ZoneMemory before, Optional<OrderMemory> order, int zone) {
    Optional<ZoneMemory> memory = before.after(zones.inside(zone), tests);
    if (memory.isEmpty() || order.isEmpty()) {
      return SIGNAL;
    }
    State state = new State(memory.get(), order.get(), zone);
    Integer known = numbers.putIfAbsent(state, states.size());
    if (known != null) {
      return known;
    }
    states.add(state);
    return states.size() - 1;
  }
}
