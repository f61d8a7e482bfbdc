package dev.filmward.report.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.OptionalDouble;
import java.util.Properties;

/**
 * What the paper says, from the catalogue of a language: sentences with {places}, plurals as two
 * keys that end in {@code .one} and {@code .other}, numbers and times as that language writes them.
 * Immutable after it was read; every thread may use it.
 */
final class Texts {
  private static final char MINUS = '\u2212';

  private final Language language;
  private final Properties sentences = new Properties();
  private final DecimalFormatSymbols signs;

  Texts(Language language) {
    this.language = language;
    String name = language.code() + ".properties";
    try (InputStream in = Texts.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the catalogue " + name + " is not in the jar");
      }
      sentences.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    signs = DecimalFormatSymbols.getInstance(language.locale());
    signs.setMinusSign(MINUS);
    signs.setGroupingSeparator('\u202f');
  }

  Language language() {
    return language;
  }

  /**
   * A sentence.
   *
   * @param places names and what to put there, in turn
   */
  String say(String key, Object... places) {
    String sentence = sentences.getProperty(key);
    if (sentence == null) {
      throw new IllegalArgumentException("no text \"" + key + "\" in " + language.code());
    }
    StringBuilder said = new StringBuilder();
    int at = 0;
    while (at < sentence.length()) {
      int open = sentence.indexOf('{', at);
      int close = open < 0 ? -1 : sentence.indexOf('}', open);
      if (close < 0) {
        break;
      }
      said.append(sentence, at, open).append(place(sentence.substring(open + 1, close), places));
      at = close + 1;
    }
    return said.append(sentence.substring(at)).toString();
  }

  private static Object place(String name, Object... places) {
    for (int i = 0; i + 1 < places.length; i += 2) {
      if (places[i].equals(name)) {
        return places[i + 1];
      }
    }
    throw new IllegalArgumentException("nothing was given for {" + name + "}");
  }

  /** A sentence about a number of things, which is given as {n}. */
  String count(String key, long n, Object... places) {
    Object[] all = new Object[places.length + 2];
    System.arraycopy(places, 0, all, 0, places.length);
    all[places.length] = "n";
    all[places.length + 1] = number((double) n, 0);
    return say(key + (n == 1 ? ".one" : ".other"), all);
  }

  /** What a code is called, or the code itself where a newer one has no name yet. */
  String called(String group, String code) {
    return sentences.getProperty(group + "." + code, code);
  }

  boolean knows(String key) {
    return sentences.containsKey(key);
  }

  /** Thousands are grouped from five digits on. */
  String number(double value, int decimals) {
    DecimalFormat format = new DecimalFormat(Math.abs(value) >= 10_000 ? "#,##0" : "0", signs);
    format.setRoundingMode(RoundingMode.HALF_UP);
    format.setMinimumFractionDigits(decimals);
    format.setMaximumFractionDigits(decimals);
    String text = format.format(value);
    boolean isZero = text.charAt(0) == MINUS && text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return isZero ? text.substring(1) : text;
  }

  /** A dash where there is nothing. */
  String number(OptionalDouble value, int decimals) {
    return value.isPresent() ? number(value.getAsDouble(), decimals) : say("none");
  }

  String day(ZonedDateTime time) {
    return time.format(pattern("pattern.day"));
  }

  String dayAndTime(ZonedDateTime time) {
    return time.format(pattern("pattern.dayAndTime"));
  }

  String weekday(ZonedDateTime time) {
    return time.format(pattern("pattern.weekday"));
  }

  private DateTimeFormatter pattern(String key) {
    return DateTimeFormatter.ofPattern(say(key), language.locale());
  }
}
