package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a heading may mean, before it is known what the other headings say. Upper and lower case
 * count as the same. Immutable.
 */
sealed interface Meaning {

  /** A field that is not a length. */
  record Plain(Field field) implements Meaning {
    @Override
    public String unit() {
      return "";
    }
  }

  /** {@code thickness_um}, {@code Thickness [um]}. */
  record Thickness(String unit) implements Meaning {}

  /** {@code layer_2_um}, {@code layer_2 (um)}. */
  record LayerAt(String position, String unit) implements Meaning {}

  /** {@code Outer skin [um]}, or perhaps a heading that has nothing to do with layers. */
  record LayerNamed(String name, String unit) implements Meaning {}

  /** Longer headings mean nothing. */
  int LONGEST = 200;

  String BRACKETS = "[\\[(](?<bracket>[^\\[\\]()]*)[\\])]";
  Pattern THICKNESS = pattern("thickness(?:_(?<tail>.*)|\\s*" + BRACKETS + ")?");
  Pattern POSITION = pattern("layer_(?<layer>[0-9]+)(?:_(?<tail>.*)|\\s*" + BRACKETS + ")?");
  Pattern NAME = pattern("(?<layer>.*\\S)\\s*" + BRACKETS);

  Map<String, Field> PLAIN =
      Stream.of(
              Field.TAKEN_AT,
              Field.LINE,
              Field.STRUCTURE,
              Field.ROLL,
              Field.SAMPLE,
              Field.LANE,
              Field.LAYER,
              Field.TEMPERATURE_C)
          .collect(Collectors.toMap(Field::heading, Function.identity()));

  static Meaning of(String heading) {
    Field field = PLAIN.get(heading.toLowerCase(Locale.ROOT));
    if (field != null) {
      return new Plain(field);
    }
    if (heading.length() > LONGEST) {
      return new LayerNamed(Words.cut(heading), "");
    }
    Matcher thickness = THICKNESS.matcher(heading);
    if (thickness.matches()) {
      return new Thickness(first(thickness.group("tail"), thickness.group("bracket")));
    }
    Matcher position = POSITION.matcher(heading);
    if (position.matches()) {
      String unit = first(position.group("tail"), position.group("bracket"));
      return new LayerAt(position.group("layer"), unit);
    }
    Matcher name = NAME.matcher(heading);
    return name.matches()
        ? new LayerNamed(name.group("layer"), name.group("bracket").strip())
        : new LayerNamed(heading, "");
  }

  /** The unit as it is written; empty where there is none. */
  String unit();

  /** The unit it gives, if it is one of length. */
  default Optional<LengthUnit> length() {
    return LengthUnit.parse(unit());
  }

  private static String first(String tail, String bracket) {
    return Stream.of(tail, bracket).filter(t -> t != null).findFirst().orElse("").strip();
  }

  private static Pattern pattern(String regex) {
    return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
  }
}
