package dev.filmward.cli;

import dev.filmward.capability.CapabilityStatement;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.LimitsTrust;
import dev.filmward.pipeline.SeriesDetail;
import dev.filmward.variation.WebComponents;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The closer look at a series, in sentences. */
final class DetailWords {
  private static final DateTimeFormatter MINUTES =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final ZoneId zone;

  DetailWords(ZoneId zone) {
    this.zone = zone;
  }

  List<String> of(SeriesDetail detail) {
    List<String> words = new ArrayList<>();
    detail.capability().map(CapabilityStatement::words).ifPresent(words::addAll);
    detail.trust().map(trust -> words(trust, detail.change())).ifPresent(words::add);
    detail.web().map(DetailWords::words).ifPresent(words::add);
    words.add(detail.change().map(this::words).orElse("No drift stands out of the noise."));
    detail.towardsLower().flatMap(f -> words(f, "lower")).ifPresent(words::add);
    detail.towardsUpper().flatMap(f -> words(f, "upper")).ifPresent(words::add);
    return words;
  }

  private static String words(WebComponents web) {
    return String.format(
        Locale.ROOT,
        "Two sigma in percent of the mean: along the web %.1f, across %.1f, the rest %.1f. %s",
        web.twoSigmaPercent(web.machineDirection()),
        web.twoSigmaPercent(web.crossDirection()),
        web.twoSigmaPercent(web.residual()),
        web.words());
  }

  /** A mean that moves makes neighbours alike by itself. */
  private static String words(LimitsTrust trust, Optional<Change> change) {
    return trust.verdict() == LimitsTrust.Verdict.TOO_NARROW && change.isPresent()
        ? "Neighbouring samples are alike, which the moving mean explains."
        : trust.words();
  }

  private String words(Change change) {
    boolean step = change.kind() == Change.Kind.STEP;
    return String.format(
        Locale.ROOT,
        "The mean %s about %s (95 %%: %s to %s), by %.3g um%s (%.3g to %.3g).",
        step ? "stepped" : "has been drifting since",
        time(change.at()),
        change.notBefore().map(this::time).orElse("before the first sample"),
        time(change.notAfter()),
        change.size().value(),
        step ? "" : " an hour",
        change.size().lower(),
        change.size().upper());
  }

  private Optional<String> words(Forecast forecast, String side) {
    String limit = "the " + side + " specification limit";
    return switch (forecast.verdict()) {
      case MEETS ->
          Optional.of(
              "If it goes on, the mean meets "
                  + limit
                  + " about "
                  + forecast.expected().map(this::time).orElse("")
                  + " (not before "
                  + forecast.notBefore().map(this::time).orElse("a week from the last sample")
                  + ").");
      case ALREADY_THERE -> Optional.of("The mean is at " + limit + " or past it.");
      case NOT_DRIFTING, NOT_WITHIN_HORIZON -> Optional.empty();
    };
  }

  private String time(Instant instant) {
    return MINUTES.format(instant.atZone(zone));
  }
}
