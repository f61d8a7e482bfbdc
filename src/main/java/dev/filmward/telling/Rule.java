package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import dev.filmward.people.Role;
import java.util.Optional;
import java.util.Set;

/**
 * Who is told of what.
 *
 * @param id 0 before it is kept
 */
public record Rule(long id, Recipient recipient, Scope scope, QuietRules quiet) {

  /**
   * A person, or a program that tells people.
   *
   * @param role what the person does in the plant; empty for a program
   */
  public record Recipient(String name, Address address, Optional<Role> role) {
    private static final int LONGEST = 80;

    public Recipient {
      name = name.strip();
      if (name.isEmpty() || name.length() > LONGEST || !name.equals(Plain.line(name))) {
        throw new IllegalArgumentException(
            "who is told needs a name of 1 to 80 characters, in one line");
      }
    }
  }

  /**
   * Which alarms, and what of them.
   *
   * @param lines empty for all of them
   * @param least this priority and more urgent ones
   */
  public record Scope(Set<String> lines, Priority least, Set<Happening> happenings) {
    public Scope {
      lines = Set.copyOf(lines);
      happenings = Set.copyOf(happenings);
      if (happenings.isEmpty()) {
        throw new IllegalArgumentException(
            "say what to tell of: opened, escalated, returned, closed");
      }
    }
  }

  public boolean wants(String line, Priority priority, Happening happening) {
    return scope.happenings.contains(happening)
        && priority.compareTo(scope.least) >= 0
        && (scope.lines.isEmpty() || scope.lines.contains(line));
  }

  public Rule withId(long newId) {
    return new Rule(newId, recipient, scope, quiet);
  }
}
