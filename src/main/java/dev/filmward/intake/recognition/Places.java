package dev.filmward.intake.recognition;

import dev.filmward.intake.Field;
import dev.filmward.intake.FileFacts;
import dev.filmward.intake.Source.Kind;
import dev.filmward.intake.Words;
import dev.filmward.intake.recognition.Question.Choice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds where each field comes from: an answer, a column, a line above the header, a part of the
 * file's name; asks where it is nowhere. One owner, one thread.
 */
final class Places {
  private final TableShape shape;
  private final Names names;
  private final Map<String, String> answers;
  private final List<Guess> guesses;
  private final NameParts nameParts;
  private final List<Question> questions;

  Places(
      TableShape shape,
      Names names,
      Map<String, String> answers,
      List<Guess> guesses,
      NameParts nameParts,
      List<Question> questions) {
    this.shape = shape;
    this.names = names;
    this.answers = answers;
    this.guesses = guesses;
    this.nameParts = nameParts;
    this.questions = questions;
  }

  Place of(Field field) {
    Optional<Place> found = answered(field).or(() -> column(field)).or(() -> outside(field));
    return found.orElseGet(() -> otherwise(field));
  }

  /** The texts that the file has for a field, as far as was looked. */
  List<String> texts(Place place) {
    return switch (place.kind()) {
      case COLUMN -> joined(place.names());
      case CONSTANT -> place.names();
      case PREAMBLE -> preamble(place.names().get(0)).stream().toList();
      case FILE -> nameParts.text(place.names().get(0)).stream().toList();
      case TAKEN_AT, COUNTED -> List.of();
    };
  }

  private List<String> joined(List<String> columns) {
    List<Integer> indices = columns.stream().map(this::index).toList();
    return shape.rows().stream()
        .map(
            row ->
                String.join(
                        " ", indices.stream().map(i -> i < row.size() ? row.get(i) : "").toList())
                    .strip())
        .filter(text -> !text.isEmpty())
        .toList();
  }

  private int index(String name) {
    for (int i = 0; i < shape.headings().size(); i++) {
      if (shape.columnName(i).equals(name)) {
        return i;
      }
    }
    throw new IllegalArgumentException("no column is named " + Words.quoted(name));
  }

  private Optional<Place> answered(Field field) {
    String answer = answers.get("field:" + field.heading());
    if (answer == null || answer.isBlank()) {
      return Optional.empty();
    }
    String said = "as you said";
    if (answer.equals("taken_at")) {
      return Optional.of(Place.of(Kind.TAKEN_AT, List.of(), said));
    }
    if (answer.equals("counted")) {
      return Optional.of(Place.of(Kind.COUNTED, List.of(), said));
    }
    return Optional.of(Place.of(Kind.CONSTANT, List.of(answer.strip()), said));
  }

  boolean hasColumn(Field field) {
    return guesses.stream().anyMatch(guess -> guess.role().field() == field);
  }

  private Optional<Place> column(Field field) {
    List<Guess> all = guesses.stream().filter(guess -> guess.role().field() == field).toList();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    if (field == Field.TAKEN_AT) {
      return Optional.of(time(all));
    }
    if (all.size() > 1) {
      List<Choice> choices = all.stream().map(g -> choice(g, field)).toList();
      String columns = Words.some(choices.stream().map(Choice::value).toList());
      questions.add(
          new Question(
              "which:" + field.heading(),
              "Several columns could hold the "
                  + FieldWords.of(field)
                  + ": "
                  + columns
                  + ". Which one?",
              choices));
      String chosen = answers.getOrDefault("which:" + field.heading(), "");
      return all.stream()
          .filter(guess -> shape.columnName(guess.index()).equals(chosen))
          .findFirst()
          .map(guess -> place(List.of(guess)))
          .or(() -> Optional.of(Place.unknown("several columns could hold it")));
    }
    return Optional.of(place(all));
  }

  private Choice choice(Guess guess, Field field) {
    String name = shape.columnName(guess.index());
    return new Choice(
        name,
        name + ", with " + shape.examples(guess.index()) + ", is the " + FieldWords.of(field));
  }

  private Place time(List<Guess> all) {
    Optional<Guess> whole = all.stream().filter(g -> g.role() == Role.TAKEN_AT).findFirst();
    if (whole.isPresent()) {
      return place(List.of(whole.get()));
    }
    Optional<Guess> date = all.stream().filter(g -> g.role() == Role.DATE).findFirst();
    Optional<Guess> clock = all.stream().filter(g -> g.role() == Role.TIME).findFirst();
    List<Guess> both = new ArrayList<>();
    date.ifPresent(both::add);
    clock.ifPresent(both::add);
    return place(both);
  }

  private Place place(List<Guess> from) {
    List<String> columns = from.stream().map(guess -> shape.columnName(guess.index())).toList();
    return Place.of(Kind.COLUMN, columns, from.get(0).reason());
  }

  private Optional<Place> outside(Field field) {
    for (var line : shape.above()) {
      Optional<Map.Entry<String, String>> entry = FileFacts.entry(line, shape.separator());
      if (entry.isPresent() && holds(entry.get().getKey(), field)) {
        return Optional.of(
            Place.of(
                Kind.PREAMBLE,
                List.of(entry.get().getKey()),
                "line " + line.number() + " says " + Words.quoted(entry.get().getValue())));
      }
    }
    return nameParts
        .text(field.heading())
        .map(
            text ->
                Place.of(
                    Kind.FILE,
                    List.of(field.heading()),
                    "the file's name says " + Words.quoted(text)));
  }

  private static boolean holds(String key, Field field) {
    return Vocabulary.role(key)
        .filter(role -> role.field() == field && role != Role.IGNORED && role != Role.TOTAL)
        .isPresent();
  }

  private Optional<String> preamble(String key) {
    return shape.above().stream()
        .flatMap(line -> FileFacts.entry(line, shape.separator()).stream())
        .filter(entry -> entry.getKey().equalsIgnoreCase(key))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  private Place otherwise(Field field) {
    switch (field) {
      case SAMPLE -> {
        return Place.of(
            Kind.TAKEN_AT,
            List.of(),
            "nothing names the sample; readings of one time are one sample");
      }
      case LANE -> {
        return Place.of(
            Kind.COUNTED, List.of(), "nothing names the lane; the rows of a sample are counted");
      }
      case STRUCTURE -> {
        if (names.codes().size() == 1) {
          return Place.of(Kind.CONSTANT, names.codes(), "the only structure that is known");
        }
      }
      default -> {}
    }
    questions.add(
        new Question(
            "field:" + field.heading(),
            "Nothing in the file says the " + FieldWords.of(field) + ". " + FieldWords.ask(field),
            choices(field)));
    return Place.unknown("nothing in the file says it");
  }

  private List<Choice> choices(Field field) {
    List<String> known =
        switch (field) {
          case STRUCTURE -> names.codes();
          case LAYER -> List.copyOf(names.layers());
          default -> List.of();
        };
    return known.stream().map(name -> new Choice(name, name)).toList();
  }

  /**
   * Asks what the texts of a field stand for, where they are no known names; gives what is known.
   */
  Place meanings(Field field, Place place) {
    Map<String, String> values = new LinkedHashMap<>();
    List<String> texts =
        texts(place).stream().distinct().filter(t -> !t.equals(Place.UNKNOWN)).toList();
    for (String text : texts.subList(0, Math.min(texts.size(), 30))) {
      Optional<String> known = field == Field.STRUCTURE ? names.code(text) : layer(text);
      String key = "value:" + field.heading() + ":" + text;
      Optional<String> meaning = Optional.ofNullable(answers.get(key)).or(() -> known);
      if (meaning.isPresent() && !meaning.get().equals(text)) {
        values.put(text, meaning.get());
      } else if (meaning.isEmpty() && !choices(field).isEmpty()) {
        questions.add(
            new Question(
                key,
                "Which " + FieldWords.of(field) + " is " + Words.quoted(text) + "?",
                choices(field)));
        values.put(text, Place.UNKNOWN);
      }
    }
    return place.with(values);
  }

  private Optional<String> layer(String text) {
    if (text.matches("[1-9][0-9]{0,3}")) {
      return Optional.of(text);
    }
    Optional<String> named = names.layer(text);
    return named.isPresent()
        ? named
        : Vocabulary.layerNumber(text).stream().mapToObj(String::valueOf).findFirst();
  }

  /** The part of the file's name that stands for each field, where it was used. */
  Optional<String> nameForm(List<Place> used) {
    boolean isUsed = used.stream().anyMatch(place -> place.kind() == Kind.FILE);
    return isUsed ? Optional.of(nameParts.form()) : Optional.empty();
  }
}
