package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Units of length by the words that exports use for them, in English and German. */
public final class Units {
  private static final Map<String, LengthUnit> WORDS =
      Map.ofEntries(
          Map.entry("micron", LengthUnit.UM),
          Map.entry("microns", LengthUnit.UM),
          Map.entry("mikron", LengthUnit.UM),
          Map.entry("micrometer", LengthUnit.UM),
          Map.entry("micrometers", LengthUnit.UM),
          Map.entry("micrometre", LengthUnit.UM),
          Map.entry("micrometres", LengthUnit.UM),
          Map.entry("mikrometer", LengthUnit.UM),
          Map.entry("my", LengthUnit.UM),
          Map.entry("millimeter", LengthUnit.MM),
          Map.entry("millimetre", LengthUnit.MM),
          Map.entry("mils", LengthUnit.MIL),
          Map.entry("thou", LengthUnit.MIL),
          Map.entry("inch", LengthUnit.IN),
          Map.entry("inches", LengthUnit.IN),
          Map.entry("zoll", LengthUnit.IN),
          Map.entry("\"", LengthUnit.IN));

  private Units() {}

  /** The unit that a word stands for, in any case. */
  public static Optional<LengthUnit> parse(String word) {
    return LengthUnit.parse(word)
        .or(() -> Optional.ofNullable(WORDS.get(word.strip().toLowerCase(Locale.ROOT))));
  }
}
