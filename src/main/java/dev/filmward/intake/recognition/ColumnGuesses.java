package dev.filmward.intake.recognition;

import dev.filmward.film.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes the headings and first rows of a file, says what each column is for. Stateless. */
final class ColumnGuesses {
  private static final Pattern LAYER_ANSWER = Pattern.compile("layer (.+?)(?: lane ([0-9]{1,5}))?");
  private static final Pattern LANE_ANSWER = Pattern.compile("lane ([0-9]{1,5})");
  private static final Pattern NUMERIC =
      Pattern.compile("[-+]?[0-9][0-9.,' \u00a0]*(\\s*[\\p{L}\u00b5\"]{1,12})?");

  private final TableShape shape;
  private final Names names;
  private final Map<String, String> answers;

  ColumnGuesses(TableShape shape, Names names, Map<String, String> answers) {
    this.shape = shape;
    this.names = names;
    this.answers = answers;
  }

  List<Guess> all() {
    List<Guess> guesses = new ArrayList<>();
    for (int i = 0; i < shape.headings().size(); i++) {
      if (!shape.headings().get(i).isEmpty()) {
        guesses.add(guess(i));
      }
    }
    return settled(guesses);
  }

  private Guess guess(int index) {
    HeadingParts parts = HeadingParts.of(shape.headings().get(index));
    Optional<LengthUnit> below =
        index < shape.units().size() ? shape.units().get(index) : Optional.empty();
    Optional<LengthUnit> unit = parts.unit().or(() -> below);
    String answer = answers.get("column:" + shape.columnName(index));
    return answer == null ? byWords(index, parts.text(), unit) : answered(index, answer, unit);
  }

  private static Guess answered(int index, String answer, Optional<LengthUnit> unit) {
    String said = "as you said";
    Matcher layer = LAYER_ANSWER.matcher(answer);
    if (layer.matches() && !answer.equals("layer")) {
      OptionalInt lane =
          layer.group(2) == null
              ? OptionalInt.empty()
              : OptionalInt.of(Integer.parseInt(layer.group(2)));
      return new Guess(index, Role.LAYER_THICKNESS, Optional.of(layer.group(1)), lane, unit, said);
    }
    Matcher lane = LANE_ANSWER.matcher(answer);
    if (lane.matches()) {
      OptionalInt number = OptionalInt.of(Integer.parseInt(lane.group(1)));
      return new Guess(index, Role.LAYER_THICKNESS, Optional.empty(), number, unit, said);
    }
    return Guess.of(index, Role.of(answer).orElse(Role.IGNORED), unit, said);
  }

  private Guess byWords(int index, String text, Optional<LengthUnit> unit) {
    Optional<String> named = names.layer(text);
    if (named.isPresent() && (unit.isPresent() || isNumeric(index))) {
      return value(
          index, named, OptionalInt.empty(), unit, "named like a layer of a known structure");
    }
    Optional<Role> role = Vocabulary.role(text);
    if (role.isPresent()) {
      return Guess.of(index, role.get(), unit, "the heading says so");
    }
    OptionalInt layer = Vocabulary.layerNumber(text);
    OptionalInt lane = Vocabulary.laneNumber(text);
    if (layer.isPresent() || lane.isPresent()) {
      Optional<String> position =
          layer.isPresent() ? Optional.of(String.valueOf(layer.getAsInt())) : Optional.empty();
      return value(index, position, lane, unit, "the heading numbers it");
    }
    if (unit.isPresent() && isNumeric(index)) {
      return Guess.of(index, Role.THICKNESS, unit, "numbers with a unit of length");
    }
    return Guess.of(index, Role.IGNORED, unit, "says nothing that is needed");
  }

  private static Guess value(
      int index,
      Optional<String> layer,
      OptionalInt lane,
      Optional<LengthUnit> unit,
      String reason) {
    return new Guess(index, Role.LAYER_THICKNESS, layer, lane, unit, reason);
  }

  private boolean isNumeric(int index) {
    List<String> cells = shape.cells(index);
    long numbers = cells.stream().filter(cell -> NUMERIC.matcher(cell).matches()).count();
    return !cells.isEmpty() && numbers * 2 > cells.size();
  }

  /** Looks at all columns together. */
  private List<Guess> settled(List<Guess> guesses) {
    return times(guesses.stream().map(guess -> settled(guess, guesses)).toList());
  }

  private Guess settled(Guess guess, List<Guess> all) {
    boolean hasLayers = all.stream().anyMatch(other -> other.layer().isPresent());
    boolean hasThickness = all.stream().anyMatch(g -> g.role() == Role.THICKNESS && isByHeading(g));
    if (isAnswered(guess)) {
      return guess;
    }
    if (guess.role() == Role.LAYER_THICKNESS && guess.layer().isEmpty() && hasLayers) {
      return guess.as(Role.LANE, "the heading says so");
    }
    if (guess.role() != Role.THICKNESS) {
      return guess;
    }
    if (has(all, Role.LAYER_THICKNESS) && isByHeading(guess)) {
      return guess.as(Role.TOTAL, "beside a column for each layer, this is of the whole film");
    }
    boolean mayBeLayer = !isByHeading(guess) && !has(all, Role.LAYER) && !hasThickness;
    if (mayBeLayer) {
      return new Guess(
          guess.index(),
          Role.LAYER_THICKNESS,
          Optional.of("?"),
          OptionalInt.empty(),
          guess.unit(),
          "numbers with a unit of length, under no name that is known");
    }
    return isByHeading(guess)
        ? guess
        : guess.as(Role.IGNORED, "a length that is no thickness of a layer");
  }

  private boolean isAnswered(Guess guess) {
    return answers.containsKey("column:" + shape.columnName(guess.index()));
  }

  private static boolean isByHeading(Guess guess) {
    return !guess.reason().startsWith("numbers");
  }

  /** A date and a time of day go together; either alone is the whole time. */
  private List<Guess> times(List<Guess> guesses) {
    if (!has(guesses, Role.TAKEN_AT)) {
      return guesses;
    }
    return guesses.stream()
        .map(
            guess ->
                (guess.role() == Role.DATE || guess.role() == Role.TIME) && !isAnswered(guess)
                    ? guess.as(Role.IGNORED, "another column holds the whole time")
                    : guess)
        .toList();
  }

  private static boolean has(List<Guess> guesses, Role role) {
    return guesses.stream().anyMatch(guess -> guess.role() == role);
  }
}
