package dev.filmward.cli;

import dev.filmward.pipeline.AuditExport;
import dev.filmward.pipeline.AuditExport.Format;
import dev.filmward.store.AuditTable;
import dev.filmward.store.AuditTable.Period;
import dev.filmward.store.StoreLook;
import dev.filmward.store.Tables;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes the audit chain out for an auditor. */
@Command(
    name = "audit",
    description =
        "Writes what people did, with the hashes that prove it, to standard output; also while in"
            + " use.",
    mixinStandardHelpOptions = true)
final class AuditCommand implements Callable<Integer> {
  @Option(
      names = "--from",
      paramLabel = "TIME",
      description =
          "The first moment: a day, or a time with its offset; the beginning unless given.")
  private String from = "";

  @Option(
      names = "--to",
      paramLabel = "TIME",
      description = "The first moment that is left out; the end unless given.")
  private String to = "";

  @Option(
      names = "--format",
      paramLabel = "json|csv",
      description = "json unless given; in csv a cell that looks like a formula is made harmless.")
  private Format format = Format.JSON;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException {
    Period period = new Period(moment("--from", from), moment("--to", to));
    try (StoreLook look = data.look()) {
      return tell(look.read(tables -> write(tables, period)));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private Optional<Instant> moment(String option, String text) {
    try {
      return AuditExport.moment(text, zone.zone);
    } catch (IllegalArgumentException e) {
      if (spec == null) {
        throw e;
      }
      throw new ParameterException(spec.commandLine(), option + ": " + e.getMessage(), e);
    }
  }

  private AuditTable.Check write(Tables tables, Period period) {
    try {
      Writer out = new BufferedWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8));
      AuditExport.write(tables.audit(), period, format, out);
      return tables.audit().check();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int tell(AuditTable.Check check) {
    System.err.println(
        check.links() + " entries in the whole chain, the newest is " + check.head());
    check.fault().ifPresent(what -> System.err.println("fault: the audit chain: " + what));
    return check.fault().isEmpty() ? ExitStatus.DONE : ExitStatus.FAILED;
  }
}
