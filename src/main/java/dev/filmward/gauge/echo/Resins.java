package dev.filmward.gauge.echo;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The media with values to start from, from {@code resins.csv} beside this class. A name that is
 * not an alias to the letter (but for case, spaces and hyphens) is not known: nothing is guessed
 * from a part of a name. Immutable.
 */
public final class Resins {
  private static final int COLUMNS = 11;
  private static final Resins BUILT_IN = new Resins(read());

  private final List<Resin> all;

  private Resins(List<Resin> all) {
    this.all = List.copyOf(all);
  }

  public static Resins builtIn() {
    return BUILT_IN;
  }

  /** Those that may stand in one of these places, in the order of the file. */
  public List<Resin> of(Resin.Use... uses) {
    return all.stream().filter(resin -> List.of(uses).contains(resin.use())).toList();
  }

  /** The family that a layer's resin belongs to. */
  public Optional<Resin> named(String resin) {
    String asked = plain(resin);
    return of(Resin.Use.LAYER).stream()
        .filter(family -> family.aliases().stream().anyMatch(alias -> plain(alias).equals(asked)))
        .findFirst();
  }

  /**
   * What may stand in one of these places.
   *
   * @throws NoSuchElementException saying what there is
   */
  public Resin in(String key, Resin.Use... uses) {
    return of(uses).stream()
        .filter(resin -> resin.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new NoSuchElementException(unknown(key, uses)));
  }

  private String unknown(String key, Resin.Use... uses) {
    String known = of(uses).stream().map(Resin::key).collect(Collectors.joining(", "));
    return "\"" + key + "\" is not known; there is " + known;
  }

  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[\\s\\-_]", "");
  }

  private static List<Resin> read() {
    try (InputStream in = Resins.class.getResourceAsStream("resins.csv");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .skip(1)
          .map(Resins::resin)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Resin resin(String line) {
    String[] cells = line.split("\\|", -1);
    if (cells.length != COLUMNS) {
      throw new IllegalStateException("resins.csv: " + COLUMNS + " columns, not \"" + line + "\"");
    }
    Arrays.setAll(cells, i -> cells[i].strip());
    return new Resin(
        cells[0],
        cells[1],
        List.of(cells[2].split("\\s*,\\s*")),
        Resin.Use.valueOf(cells[3].toUpperCase(Locale.ROOT)),
        new Resin.Span(number(cells[4]), number(cells[5]), number(cells[6])),
        number(cells[7]),
        cells[8].isEmpty() ? Optional.empty() : Optional.of(middle(cells[8], cells[9])),
        cells[10]);
  }

  private static Resin.Span middle(String low, String high) {
    double from = number(low);
    double to = number(high);
    return new Resin.Span(from, (from + to) / 2, to);
  }

  private static double number(String cell) {
    return Double.parseDouble(cell);
  }
}
