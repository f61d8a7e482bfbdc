package dev.filmward.cli;

import dev.filmward.capability.CapabilityStatement;
import dev.filmward.capability.Giveaway;
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
  private final OutputOptions output;

  DetailWords(ZoneId zone, OutputOptions output) {
    this.zone = zone;
    this.output = output;
  }

  List<String> of(SeriesDetail detail) {
    List<String> words = new ArrayList<>();
    detail.capability().map(CapabilityStatement::words).ifPresent(words::addAll);
    detail.trust().map(trust -> words(trust, detail.change())).ifPresent(words::add);
    detail.web().map(web -> words(web, detail.change())).ifPresent(words::add);
    words.add(detail.change().map(this::words).orElse("No drift stands out of the noise."));
    detail.towardsLower().flatMap(f -> words(f, "lower")).ifPresent(words::add);
    detail.towardsUpper().flatMap(f -> words(f, "upper")).ifPresent(words::add);
    detail.giveaway().map(giveaway -> words(giveaway, detail)).ifPresent(words::add);
    return words;
  }

  private String words(Giveaway giveaway, SeriesDetail detail) {
    List<String> amounts = new ArrayList<>();
    output.gPerM2(detail).ifPresent(g -> amounts.add(amount("%.2f g/m2", g)));
    output.kgPerHour(detail).ifPresent(kg -> amounts.add(amount("%.2f kg/h", kg)));
    output
        .moneyPerWeek(detail)
        .ifPresent(
            money ->
                amounts.add(
                    amount("%.0f of the price's money", money)
                        + amount(" in a week of %.0f h", output.hoursPerWeek())));
    boolean isSaving = giveaway.isReachable() && giveaway.achievableUm().orElse(0) > 0;
    return "Giveaway: "
        + giveaway.words()
        + (isSaving && !amounts.isEmpty() ? " That is " + String.join(", ", amounts) + "." : "")
        + (isSaving && giveaway.contractMeanUm().isEmpty()
            ? " No least mean is agreed: ask the customer before you go below the target."
            : "")
        + (isSaving ? " Check the gauge's velocity before you take resin out." : "");
  }

  private static String amount(String pattern, double value) {
    return String.format(Locale.ROOT, pattern, value);
  }

  private static String words(WebComponents web, Optional<Change> change) {
    return String.format(
        Locale.ROOT,
        "Where the variation is (two sigma in percent of the mean): along the web %.1f %%, across"
            + " %.1f %%, the rest %.1f %%. %s",
        web.twoSigmaPercent(web.machineDirection()),
        web.twoSigmaPercent(web.crossDirection()),
        web.twoSigmaPercent(web.residual()),
        verdict(web, change));
  }

  /** A mean that moves makes samples differ by itself. */
  private static String verdict(WebComponents web, Optional<Change> change) {
    return switch (web.verdict()) {
      case SUITED -> web.words();
      case BLIND -> web.words() + " Draw it with --charts three-way.";
      case NERVOUS ->
          change.isPresent()
              ? "Samples differ along the web, which the moving mean explains."
              : web.words() + " Draw it with --charts three-way.";
    };
  }

  /** A mean that moves makes neighbours alike by itself. */
  private static String words(LimitsTrust trust, Optional<Change> change) {
    return trust.verdict() == LimitsTrust.Verdict.TOO_NARROW && change.isPresent()
        ? "Neighbouring samples are alike, which the moving mean explains."
        : trust.words()
            + (trust.verdict() == LimitsTrust.Verdict.TOO_NARROW
                ? " Draw them with --charts residual."
                : "");
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
