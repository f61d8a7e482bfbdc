package dev.filmward.cli;

import dev.filmward.capability.Giveaway;
import dev.filmward.capability.LineOutput;
import dev.filmward.pipeline.SeriesDetail;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How much film the line makes and what it costs, so that thickness too much can be money. */
final class OutputOptions {
  private static final double HOURS_IN_A_WEEK = 168;

  @Option(
      names = "--width",
      paramLabel = "M",
      description = "With --detail: trimmed width of the film in m, for resin in kg/h.")
  private @Nullable Double widthM;

  @Option(
      names = "--speed",
      paramLabel = "M/MIN",
      description = "With --detail: speed of the line in m/min, for resin in kg/h.")
  private @Nullable Double speedMPerMin;

  @Option(
      names = "--price",
      paramLabel = "PER_KG",
      description = "With --detail: price of a kilogram of resin, the same for all layers.")
  private @Nullable Double perKg;

  @Option(
      names = "--hours",
      paramLabel = "H",
      description = "With --detail: hours a week in which good film is made; 168 unless given.")
  private double hoursPerWeek = HOURS_IN_A_WEEK;

  /** Words on what is wrong; empty where nothing is. */
  String fault() {
    boolean isPositive = isAboveZero(widthM) && isAboveZero(speedMPerMin) && isAboveZero(perKg);
    if (!isPositive || !(hoursPerWeek > 0 && hoursPerWeek <= HOURS_IN_A_WEEK)) {
      return "--width, --speed and --price are above zero, --hours at most 168.";
    }
    if ((widthM == null) != (speedMPerMin == null) || (perKg != null && widthM == null)) {
      return "--width and --speed belong together, and --price needs both.";
    }
    return "";
  }

  private static boolean isAboveZero(@Nullable Double value) {
    return value == null || (value > 0 && Double.isFinite(value));
  }

  double hoursPerWeek() {
    return hoursPerWeek;
  }

  /** Resin in what could be taken out; negative where it is missing. */
  OptionalDouble gPerM2(SeriesDetail detail) {
    OptionalDouble um = achievableUm(detail);
    return um.isPresent() && detail.densityGcm3().isPresent()
        ? OptionalDouble.of(um.getAsDouble() * detail.densityGcm3().getAsDouble())
        : OptionalDouble.empty();
  }

  OptionalDouble kgPerHour(SeriesDetail detail) {
    OptionalDouble um = achievableUm(detail);
    if (um.isEmpty() || detail.densityGcm3().isEmpty() || widthM == null || speedMPerMin == null) {
      return OptionalDouble.empty();
    }
    double meanUm = detail.giveaway().map(Giveaway::meanUm).orElseThrow();
    return OptionalDouble.of(
        new LineOutput.Web(widthM, speedMPerMin)
            .kgPerHour(um.getAsDouble(), meanUm, detail.densityGcm3().getAsDouble()));
  }

  OptionalDouble moneyPerWeek(SeriesDetail detail) {
    OptionalDouble kgPerHour = kgPerHour(detail);
    return kgPerHour.isPresent() && perKg != null
        ? OptionalDouble.of(kgPerHour.getAsDouble() * hoursPerWeek * perKg)
        : OptionalDouble.empty();
  }

  private static OptionalDouble achievableUm(SeriesDetail detail) {
    return detail.giveaway().map(Giveaway::achievableUm).orElse(OptionalDouble.empty());
  }
}
