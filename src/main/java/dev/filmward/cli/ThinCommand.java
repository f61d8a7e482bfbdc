package dev.filmward.cli;

import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.Thinning;
import dev.filmward.pipeline.Thinning.Order;
import dev.filmward.pipeline.Thinning.Outcome;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Takes old raw readings away and leaves all that charts need. */
@Command(
    name = "thin",
    description =
        "Takes the raw readings of old samples away; their figures, signals, limits and alarms"
            + " stay. Cannot be undone: make a backup first.",
    mixinStandardHelpOptions = true)
final class ThinCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--older-than",
      paramLabel = "DAYS",
      required = true,
      description = "Samples taken more than so many days ago; at least 1.")
  private int days;

  @Option(names = "--by", paramLabel = "NAME", required = true, description = "Who decides so.")
  private String by = "";

  @Option(names = "--reason", paramLabel = "TEXT", required = true, description = "Why.")
  private String reason = "";

  @Option(names = "--dry-run", description = "Only say what would go.")
  private boolean dryRun;

  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() {
    if (days < 1 || by.isBlank() || reason.isBlank()) {
      throw new ParameterException(
          command().commandLine(),
          "--older-than is at least 1; --by and --reason say who decides so and why.");
    }
    try (Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone)) {
      Order order = new Order(plant.clock().instant().minus(Duration.ofDays(days)), by, reason);
      Thinning thinning = new Thinning(plant);
      System.out.println(words(dryRun ? thinning.rehearse(order) : thinning.run(order)));
    }
    return ExitStatus.DONE;
  }

  private String words(Outcome outcome) {
    if (outcome.samples() == 0) {
      return "nothing to thin: no sample is that old and has readings";
    }
    OffsetTimes times = new OffsetTimes(zone.zone);
    return "%d samples, %d readings, taken from %s to %s: %s"
        .formatted(
            outcome.samples(),
            outcome.readings(),
            times.of(outcome.from().orElseThrow()),
            times.of(outcome.to().orElseThrow()),
            dryRun ? "would be thinned; nothing is changed" : "thinned to their subgroup figures");
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("run through the command line");
    }
    return spec;
  }
}
