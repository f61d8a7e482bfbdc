package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Puts readings into words. Immutable. */
final class Evidence {
  private final HeardFilm film;
  private final HeardSample heard;
  private final Usual usual;

  Evidence(HeardFilm film, HeardSample heard, Usual usual) {
    this.film = film;
    this.heard = heard;
    this.usual = usual;
  }

  /** The gauge's numbers of lanes by their index. */
  List<Integer> numbers(List<Integer> lanes) {
    return heard.numbers(lanes);
  }

  /** What was read at some lanes and what is usual there, um. */
  String readAndUsual(List<Integer> lanes) {
    return "read "
        + list(position -> middleUm(position, lanes))
        + " um; usual "
        + list(position -> usualUm(position, lanes))
        + " um.";
  }

  private String list(IntToDoubleFunction um) {
    return IntStream.rangeClosed(1, film.layers())
        .mapToDouble(um)
        .mapToObj(Evidence::um)
        .collect(Collectors.joining(" / "));
  }

  private double middleUm(int position, List<Integer> lanes) {
    double[] read =
        lanes.stream()
            .filter(lane -> !heard.isBlank(position, lane))
            .mapToDouble(lane -> heard.sample().thicknessUm(position, lane))
            .toArray();
    return read.length == 0 ? Double.NaN : Middle.of(read);
  }

  private double usualUm(int position, List<Integer> lanes) {
    double[] all =
        lanes.stream()
            .mapToDouble(lane -> film.um(position, usual.ns(position, heard.sample().lane(lane))))
            .toArray();
    return Middle.of(all);
  }

  /** As fine as a gauge can tell; a word where there is nothing. */
  static String um(double um) {
    if (Double.isNaN(um)) {
      return "blank";
    }
    return String.format(Locale.ROOT, um < 10 ? "%.2f" : "%.1f", um);
  }

  static String percent(double fraction) {
    return String.format(Locale.ROOT, "%+.0f %%", 100 * fraction);
  }

  /** Lanes as words: one, or all of them. */
  static String lanes(List<Integer> numbers) {
    return (numbers.size() == 1 ? "lane " : "lanes ")
        + Arrays.toString(numbers.toArray()).replaceAll("[\\[\\]]", "");
  }
}
