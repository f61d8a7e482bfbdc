package dev.filmward.diagnosis;

import dev.filmward.diagnosis.Boundary.Kind;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * Something that happened at a line, as a person wrote it down. Immutable; what was wrong is
 * withdrawn and stays readable.
 *
 * @param id given by the store; 0 before that
 * @param what when it happened, of which kind, to which layers
 */
public record LineEntry(
    long id, String line, Boundary what, Note written, Optional<Note> withdrawn) {
  private static final int LONGEST_WORDS = 200;

  /** What only people know; rolls, shifts and starts are seen from elsewhere. */
  private static final Set<Kind> OF_PEOPLE =
      Set.of(Kind.RESIN_LOT, Kind.SCREEN_CHANGE, Kind.CALIBRATION);

  /**
   * Who wrote something, and when.
   *
   * @param why empty for what happened; the reason for what was withdrawn
   */
  public record Note(String by, String why, Instant at) {}

  public LineEntry {
    if (!OF_PEOPLE.contains(what.kind())) {
      throw new IllegalArgumentException(
          what.kind().words()
              + " is seen from the samples; write down resin-lot, screen-change or"
              + " calibration");
    }
    if (what.words().length() > LONGEST_WORDS) {
      throw new IllegalArgumentException(
          "say what happened in at most " + LONGEST_WORDS + " characters");
    }
    if (what.at().isAfter(written.at())) {
      throw new IllegalArgumentException("write down what happened, not what will happen");
    }
    if (withdrawn.isPresent() && withdrawn.get().why().isBlank()) {
      throw new IllegalArgumentException("why is it withdrawn? Give a reason");
    }
  }

  /** As it was just written. */
  public static LineEntry written(String line, Boundary what, String by, Instant at) {
    return new LineEntry(0, line, what, new Note(by, "", at), Optional.empty());
  }
}
