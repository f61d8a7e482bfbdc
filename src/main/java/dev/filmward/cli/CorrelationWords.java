package dev.filmward.cli;

import dev.filmward.composition.Correlation;
import dev.filmward.composition.LayerPair;
import dev.filmward.pipeline.FilmCorrelations;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How the layers of a film move together, for people. */
final class CorrelationWords {
  private static final int SHOWN = 8;
  private static final double BY_CHANCE = 0.05;

  private CorrelationWords() {}

  /** A table of the pairs that stand out of the noise, strongest first, and what to make of it. */
  static String of(FilmCorrelations film) {
    StringBuilder words = new StringBuilder();
    words.append(
        String.format(
            Locale.ROOT,
            "%nHow the layers move together: %s, %s, means of %d samples.%n",
            film.line(),
            film.structure(),
            film.samples()));
    List<LayerPair> sure = film.pairs().stream().filter(CorrelationWords::isSure).toList();
    int width = sure.stream().mapToInt(pair -> name(film, pair).length()).max().orElse(0);
    if (!sure.isEmpty()) {
      String pattern = "  %-" + width + "s  %-22s  %-22s  %-22s";
      words.append(row(pattern, "95 % limits in brackets", "thickness", "share", "log-ratio"));
      sure.stream()
          .sorted(Comparator.comparingDouble(pair -> -strength(pair)))
          .limit(SHOWN)
          .forEach(
              pair ->
                  words.append(
                      row(
                          pattern,
                          name(film, pair),
                          cell(pair.thickness()),
                          cell(pair.share()),
                          cell(pair.logRatio()))));
    }
    sentences(film).forEach(sentence -> words.append("  ").append(sentence).append('\n'));
    return words.toString();
  }

  static List<String> sentences(FilmCorrelations film) {
    List<String> words = new ArrayList<>();
    long sure = film.pairs().stream().filter(CorrelationWords::isSure).count();
    words.add(
        String.format(
            Locale.ROOT,
            "The thicknesses of %d of %d pairs of layers move together more than chance usually"
                + " makes them (by chance alone about %.0f would)%s.",
            sure,
            film.pairs().size(),
            Math.ceil(BY_CHANCE * film.pairs().size()),
            sure > SHOWN ? "; the strongest " + SHOWN + " are shown" : ""));
    words.add(
        "Shares add up to one, so what one layer gains the others lose: below zero is usual for"
            + " shares and no finding. Log-ratios suffer less from that, but one layer that drifts"
            + " makes those of all others move together.");
    film.pairs().stream().filter(LayerPair::isTrade).forEach(pair -> words.add(trade(film, pair)));
    return words;
  }

  private static String trade(FilmCorrelations film, LayerPair pair) {
    return String.format(
        Locale.ROOT,
        "Look at this: %s and %s trade thickness at constant total (correlation %s). Read one"
            + " sample again first: a boundary that the gauge misplaced does not repeat. If it"
            + " repeats, the split of the melt between the two is moving.",
        film.name(pair.first()),
        film.name(pair.second()),
        pair.thickness().map(found -> number(found.r())).orElse("-"));
  }

  private static boolean isSure(LayerPair pair) {
    return pair.thickness().map(Correlation::isSure).orElse(false);
  }

  private static double strength(LayerPair pair) {
    return pair.thickness().map(found -> Math.abs(found.r())).orElse(0.0);
  }

  private static String name(FilmCorrelations film, LayerPair pair) {
    return film.name(pair.first()) + " and " + film.name(pair.second());
  }

  private static String cell(Optional<Correlation> found) {
    return found
        .map(r -> number(r.r()) + " (" + number(r.lower()) + " to " + number(r.upper()) + ")")
        .orElse("-");
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String row(String pattern, Object... cells) {
    return String.format(Locale.ROOT, pattern, cells).stripTrailing() + "\n";
  }
}
