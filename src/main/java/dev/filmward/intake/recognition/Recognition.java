package dev.filmward.intake.recognition;

import dev.filmward.film.LengthUnit;
import dev.filmward.film.Structures;
import dev.filmward.intake.Field;
import dev.filmward.intake.FileFacts;
import dev.filmward.intake.FileNameForm;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.HeadText;
import dev.filmward.intake.Mapping;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.MappingFile;
import dev.filmward.intake.Separator;
import dev.filmward.intake.Source;
import dev.filmward.intake.TimePattern;
import dev.filmward.intake.Units;
import dev.filmward.intake.Words;
import dev.filmward.intake.recognition.Proposal.ProposedColumn;
import dev.filmward.intake.recognition.Question.Choice;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Takes the beginning of a file, proposes how to read it. What a person answered counts more than
 * what was found out; answers that fit no question change nothing. One owner, one thread.
 */
public final class Recognition {
  private static final int EXAMPLES = 3;

  private final String fileName;
  private final ZoneId zone;
  private final Map<String, String> answers;
  private final Names names;
  private final TableShape shape;
  private final List<Question> questions = new ArrayList<>();

  private Recognition(
      byte[] head, String fileName, Structures structures, ZoneId zone, Map<String, String> answers)
      throws FileRefused {
    this.fileName = fileName;
    this.zone = zone;
    this.answers = answers;
    this.names = new Names(structures);
    this.shape = TableShape.of(HeadText.of(head), fileName, separators(answers), names);
  }

  /** What there is to recognise a file by. */
  public record Known(Structures structures, ZoneId plantZone) {}

  /**
   * Looks at the beginning of a file.
   *
   * @param head as {@link HeadText#take} gives it
   * @param answers to questions, by their keys; also {@code column:NAME} for what a column means,
   *     {@code unit:NAME}, {@code separator}, {@code zone} and {@code name}
   * @throws FileRefused if nothing in it looks like a table of thicknesses
   */
  public static Proposal of(byte[] head, String fileName, Known known, Map<String, String> answers)
      throws FileRefused {
    return new Recognition(head, fileName, known.structures, known.plantZone, answers).propose();
  }

  private static List<Separator> separators(Map<String, String> answers) {
    return List.of(Separator.values()).stream()
        .filter(
            separator ->
                !answers.containsKey("separator")
                    || separator.name().equalsIgnoreCase(answers.get("separator")))
        .toList();
  }

  private Proposal propose() throws FileRefused {
    List<Guess> guesses = new ColumnGuesses(shape, names, answers).all();
    List<Guess> values = guesses.stream().filter(Guess::isValue).toList();
    if (values.isEmpty()) {
      throw new FileRefused(
          fileName
              + ", "
              + shape.headerPlace()
              + ": no column looks like a thickness; head it with its unit, as in Dicke [um]");
    }
    List<String> cells = values.stream().flatMap(g -> shape.cells(g.index()).stream()).toList();
    NumberGuess numbers = NumberGuess.of(cells, shape.separator(), answers);
    if (numbers.decimal().isEmpty()) {
      askDecimal(numbers);
    }
    NameParts nameParts = new NameParts(fileName);
    Places finder = new Places(shape, names, answers, guesses, nameParts, questions);
    Map<Field, Place> places = places(finder, values);
    Draft draft =
        new Draft(
            answers.getOrDefault("name", FileNameForm.stem(fileName)),
            shape,
            numbers,
            places,
            time(finder, nameParts, places),
            values.stream().map(guess -> value(guess, numbers)).toList(),
            finder.nameForm(List.copyOf(places.values())));
    List<Question> open =
        questions.stream().filter(q -> answers.getOrDefault(q.key(), "").isBlank()).toList();
    String yaml = MappingYaml.of(draft, open);
    return new Proposal(
        yaml, columns(guesses, draft), firstRows(), reasons(draft), open, mapping(yaml, open));
  }

  private Map<Field, Place> places(Places finder, List<Guess> values) {
    Map<Field, Place> places = new LinkedHashMap<>();
    for (Field field :
        List.of(Field.TAKEN_AT, Field.LINE, Field.STRUCTURE, Field.ROLL, Field.SAMPLE)) {
      places.put(field, finder.of(field));
    }
    if (values.stream().allMatch(guess -> guess.lane().isEmpty())) {
      places.put(Field.LANE, finder.of(Field.LANE));
    }
    if (values.stream().allMatch(guess -> guess.layer().isEmpty())) {
      places.put(Field.LAYER, finder.of(Field.LAYER));
    }
    if (finder.hasColumn(Field.TEMPERATURE_C)) {
      places.put(Field.TEMPERATURE_C, finder.of(Field.TEMPERATURE_C));
    }
    for (Field field : List.of(Field.STRUCTURE, Field.LAYER)) {
      places.computeIfPresent(field, finder::meanings);
    }
    return places;
  }

  private void askDecimal(NumberGuess numbers) {
    questions.add(
        new Question(
            "decimal",
            "Is the comma in the thicknesses a decimal sign? " + numbers.reason() + ".",
            List.of(
                new Choice("comma", "yes, 1,234 is a little more than one"),
                new Choice("point", "no, 1,234 is more than a thousand"))));
  }

  private Draft.Time time(Places finder, NameParts nameParts, Map<Field, Place> places) {
    Place place = places.getOrDefault(Field.TAKEN_AT, Place.unknown(""));
    String given = answers.getOrDefault("zone", zoneAbove().orElse(zone.getId()));
    if (answers.containsKey("pattern")) {
      return new Draft.Time(answers.get("pattern"), given, "as you said");
    }
    if (place.kind() == Source.Kind.FILE) {
      return new Draft.Time(
          nameParts.timePattern().orElse(Place.UNKNOWN), given, "the year comes first");
    }
    List<String> texts = finder.texts(place);
    if (texts.contains(Place.UNKNOWN)) {
      return new Draft.Time(TimePattern.ISO, given, "to be written so");
    }
    TimeGuess guess = TimeGuess.of(texts);
    if (guess.patterns().size() == 1) {
      String pattern = guess.patterns().get(0);
      return new Draft.Time(pattern, zoneOf(pattern, texts, given), guess.reason());
    }
    questions.add(TimeQuestion.of(guess));
    return new Draft.Time(Place.UNKNOWN, given, "only a person can know the pattern");
  }

  private static String zoneOf(String pattern, List<String> texts, String given) {
    TimePattern read = TimePattern.of(pattern);
    boolean local =
        texts.stream()
            .flatMap(text -> read.read(text).stream())
            .anyMatch(moment -> moment.offset() == null);
    return local ? given : "";
  }

  /** A line above the header may say the zone. */
  private Optional<String> zoneAbove() {
    return shape.above().stream()
        .flatMap(line -> FileFacts.entry(line, shape.separator()).stream())
        .filter(e -> Vocabulary.plain(e.getKey()).matches("time ?zone|zeitzone|zone|tz"))
        .map(Map.Entry::getValue)
        .filter(ZoneId.getAvailableZoneIds()::contains)
        .findFirst();
  }

  private Draft.Value value(Guess guess, NumberGuess numbers) {
    String name = shape.columnName(guess.index());
    if (guess.layer().filter(Place.UNKNOWN::equals).isPresent()) {
      questions.add(
          new Question(
              "column:" + name,
              "Which layer is behind the column " + Words.quoted(name) + "?",
              layerChoices()));
    }
    String lane = guess.lane().isPresent() ? String.valueOf(guess.lane().getAsInt()) : "";
    return new Draft.Value(name, unit(guess, name, numbers), guess.layer(), lane, guess.reason());
  }

  private List<Choice> layerChoices() {
    List<Choice> choices = new ArrayList<>();
    names.layers().forEach(layer -> choices.add(new Choice("layer " + layer, layer)));
    choices.add(new Choice("ignored", "none, leave it out"));
    return choices;
  }

  private String unit(Guess guess, String name, NumberGuess numbers) {
    String answer = answers.getOrDefault("unit:" + name, answers.getOrDefault("unit", ""));
    Optional<LengthUnit> unit =
        guess.unit().isPresent() && !answers.containsKey("unit:" + name)
            ? guess.unit()
            : Units.parse(answer).or(this::unitAbove);
    if (unit.isPresent()) {
      return unit.get().symbol();
    }
    if (numbers.unitsInCells()) {
      return "cell";
    }
    if (questions.stream().noneMatch(question -> question.key().equals("unit"))) {
      questions.add(unitQuestion(name, guess));
    }
    return Place.UNKNOWN;
  }

  private Question unitQuestion(String name, Guess guess) {
    return new Question(
        "unit",
        "In which unit are the thicknesses? Neither the heading "
            + Words.quoted(name)
            + " nor a line says it; the first are "
            + shape.examples(guess.index())
            + ".",
        List.of(
            new Choice("um", "micrometres"),
            new Choice("mm", "millimetres"),
            new Choice("mil", "mils, thousandths of an inch"),
            new Choice("in", "inches")));
  }

  /** A line above the header may say the unit of all. */
  private Optional<LengthUnit> unitAbove() {
    return shape.above().stream()
        .flatMap(line -> FileFacts.entry(line, shape.separator()).stream())
        .filter(
            e -> Vocabulary.plain(e.getKey()).matches("(thickness )?units?|(mass)?einheit(en)?"))
        .flatMap(e -> Units.parse(e.getValue().replaceAll("[\\[\\]()]", "")).stream())
        .findFirst();
  }

  private List<ProposedColumn> columns(List<Guess> guesses, Draft draft) {
    return guesses.stream()
        .map(
            guess -> {
              String name = shape.columnName(guess.index());
              String unit =
                  draft.values().stream()
                      .filter(value -> value.column().equals(name))
                      .map(Draft.Value::unit)
                      .findFirst()
                      .orElse("");
              List<String> examples =
                  shape.cells(guess.index()).stream()
                      .distinct()
                      .limit(EXAMPLES)
                      .map(Words::cut)
                      .toList();
              return new ProposedColumn(name, guess.meaning(), unit, guess.reason(), examples);
            })
        .toList();
  }

  /** Cells under headings only, as the columns are listed. */
  private List<List<String>> firstRows() {
    return shape.rows().stream().limit(Proposal.FIRST_ROWS).map(this::underHeadings).toList();
  }

  private List<String> underHeadings(List<String> row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < shape.headings().size(); i++) {
      if (!shape.headings().get(i).isEmpty()) {
        cells.add(i < row.size() ? Words.cut(row.get(i)) : "");
      }
    }
    return cells;
  }

  private static List<String> reasons(Draft draft) {
    List<String> reasons = new ArrayList<>();
    reasons.add("fields are separated by " + draft.shape().separator().words());
    reasons.add("the header stands in " + draft.shape().headerPlace());
    draft
        .numbers()
        .decimal()
        .ifPresent(
            sign ->
                reasons.add(
                    "the decimal sign is a "
                        + sign.name().toLowerCase(Locale.ROOT)
                        + ": "
                        + draft.numbers().reason()));
    draft
        .places()
        .forEach((field, place) -> reasons.add(FieldWords.of(field) + ": " + place.reason()));
    reasons.add("times are written as " + draft.time().pattern() + ": " + draft.time().reason());
    if (!draft.time().zone().isEmpty()) {
      reasons.add("times without an offset are local times of " + draft.time().zone());
    }
    if (!draft.missing().isEmpty()) {
      reasons.add("nothing was measured where it says " + Words.some(draft.missing()));
    }
    return reasons;
  }

  private Optional<Mapping> mapping(String yaml, List<Question> open) throws FileRefused {
    if (!open.isEmpty()) {
      return Optional.empty();
    }
    try {
      byte[] bytes = yaml.getBytes(StandardCharsets.UTF_8);
      return Optional.of(MappingFile.read(new ByteArrayInputStream(bytes), "the mapping"));
    } catch (MappingFault e) {
      throw new FileRefused(fileName + " cannot be read so: " + e.getMessage());
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory cannot be read", e);
    }
  }
}
