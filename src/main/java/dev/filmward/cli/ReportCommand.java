package dev.filmward.cli;

import dev.filmward.pipeline.Plant;
import dev.filmward.report.ReportChange;
import dev.filmward.report.ReportDesk;
import dev.filmward.report.ReportDiff;
import dev.filmward.report.ReportForm;
import dev.filmward.report.ReportForm.Choice;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Size;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.ReportForms;
import dev.filmward.report.ReportWeek;
import dev.filmward.report.WeekReader;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.report.WeeklyReport;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The weekly capability report of what is stored. */
@Command(
    name = "report",
    description =
        "The weekly capability report of what is stored, as a draft: nothing is kept or signed. A"
            + " report is issued on the page of the dashboard.",
    mixinStandardHelpOptions = true)
final class ReportCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--week",
      paramLabel = "YEAR-Wnn",
      description = "ISO week in the plant's zone; the last one that has ended unless given.")
  private String week = "";

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "Where to; the ending says the form: .pdf, .html, .xlsx or .json.")
  private Path out = Path.of("");

  @Option(names = "--language", paramLabel = "en|de", description = "en unless given.")
  private String language = "en";

  @Option(names = "--paper", paramLabel = "a4|letter", description = "a4 unless given.")
  private String paper = "a4";

  @Option(
      names = "--edition",
      paramLabel = "internal|customer",
      description = "customer: without costs and names of people; internal unless given.")
  private String edition = "internal";

  @Option(names = "--line", paramLabel = "NAME", description = "Only of one line.")
  private String line = "";

  @Option(names = "--structure", paramLabel = "CODE", description = "Only of one structure.")
  private String structure = "";

  @Option(
      names = "--compare",
      paramLabel = "YEAR-Wnn",
      description = "Also what differs from another week, on standard output.")
  private String compare = "";

  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException {
    ReportForm form = asked(() -> ReportForms.byEnding(out.getFileName().toString()));
    Choice choice = asked(this::choice);
    try (Plant plant = new Plant(data.open(), Clock.systemUTC(), zone.zone)) {
      ReportDesk desk = new ReportDesk(plant, new WeekReader(plant, new Version().getVersion()[0]));
      Scope scope = new Scope(line, structure);
      WeeklyReport report = desk.preview(asked(() -> week(plant)), scope);
      if (!compare.isEmpty()) {
        ReportWeek other = asked(() -> ReportWeek.parse(compare, zone.zone));
        tell(ReportDiff.of(desk.preview(other, scope), report));
      }
      write(edition.equals("customer") ? report.forCustomer() : report, form, choice);
      System.err.println(
          report.week() + ": " + report.films().size() + " films, written to " + out);
    }
    return ExitStatus.DONE;
  }

  private ReportWeek week(Plant plant) {
    return week.isEmpty()
        ? ReportWeek.of(plant.clock().instant(), zone.zone).minus(1)
        : ReportWeek.parse(week, zone.zone);
  }

  private Choice choice() {
    if (!List.of("en", "de").contains(language)) {
      throw new IllegalArgumentException("--language is en or de, not \"" + language + "\"");
    }
    if (!List.of("a4", "letter").contains(paper)) {
      throw new IllegalArgumentException("--paper is a4 or letter, not \"" + paper + "\"");
    }
    if (!List.of("internal", "customer").contains(edition)) {
      throw new IllegalArgumentException(
          "--edition is internal or customer, not \"" + edition + "\"");
    }
    return new Choice(language, Size.valueOf(paper.toUpperCase(Locale.ROOT)));
  }

  /** Whole or not at all: a file that was there stays until the new one is written. */
  private void write(WeeklyReport report, ReportForm form, Choice choice) throws IOException {
    Path target = out.toAbsolutePath();
    Path beside = target.resolveSibling(target.getFileName() + ".part");
    try {
      try (OutputStream stream = new BufferedOutputStream(Files.newOutputStream(beside))) {
        form.write(new Issue(report, Standing.DRAFT), choice, stream);
      }
      Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private static void tell(List<ReportChange> changes) {
    changes.forEach(
        change ->
            System.out.println(
                String.join(
                        ", ",
                        change.line(),
                        change.structure(),
                        change.characteristic(),
                        change.figure())
                    + ": "
                    + (change.before().isEmpty() ? "nothing" : change.before())
                    + " -> "
                    + (change.after().isEmpty() ? "nothing" : change.after())));
  }

  private <T> T asked(Callable<T> reading) {
    try {
      return reading.call();
    } catch (IllegalArgumentException e) {
      throw wrong(e);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private RuntimeException wrong(IllegalArgumentException e) {
    return spec == null ? e : new ParameterException(spec.commandLine(), e.getMessage(), e);
  }
}
