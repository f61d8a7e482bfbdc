package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a message says of an alarm. Names come from files and may hold anything.
 *
 * @param title which layers and how, for example {@code Inner tie: thinner than usual}
 * @param layers the characteristics, by name
 * @param state as the alarm's state is written in files
 * @param since when the first of its samples was taken
 * @param firstChecks what to look at first, nearest and cheapest first
 * @param link where it is shown
 */
public record AlarmFacts(
    long id,
    Made made,
    String title,
    List<String> layers,
    Priority priority,
    boolean outOfSpec,
    String state,
    Instant since,
    List<String> firstChecks,
    Optional<String> link) {

  /** What was being made, and where. */
  public record Made(String line, String structure) {}

  public AlarmFacts {
    layers = List.copyOf(layers);
    firstChecks = List.copyOf(firstChecks);
  }
}
