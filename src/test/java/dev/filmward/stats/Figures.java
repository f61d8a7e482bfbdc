package dev.filmward.stats;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Figures to compare with: CSV files beside the tests, whose first lines (#) name the source. */
public final class Figures {
  private Figures() {}

  /** Rows of a file of numbers without headings. */
  public static double[][] rows(Class<?> test, String file) {
    return lines(test, file).stream().map(Figures::numbers).toArray(double[][]::new);
  }

  /** Rows of a file with headings, by heading. */
  public static List<Map<String, String>> table(Class<?> test, String file) {
    List<String> lines = lines(test, file);
    String[] headings = lines.get(0).split(",", -1);
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, String> row = new HashMap<>();
      for (int i = 0; i < headings.length; i++) {
        row.put(headings[i], cells[i]);
      }
      rows.add(row);
    }
    return rows;
  }

  private static double[] numbers(String line) {
    return Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray();
  }

  private static List<String> lines(Class<?> test, String file) {
    try (InputStream in = test.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
