package dev.filmward.cli;

import dev.filmward.pipeline.StoredCheck;
import dev.filmward.store.StoreLook;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Proves that what is stored is whole. */
@Command(
    name = "verify",
    description =
        "Checks the database, the figures of every sample and the audit chain; also while in use.",
    mixinStandardHelpOptions = true)
final class VerifyCommand implements Callable<Integer> {
  @Option(
      names = "--audit-head",
      paramLabel = "HASH",
      description =
          "A hash of the audit chain that was kept elsewhere; it must still be in the chain.")
  private @Nullable String auditHead;

  @Mixin private DataOption data = new DataOption();

  @Override
  public Integer call() {
    try (StoreLook look = data.look()) {
      return tell(StoredCheck.of(look, Optional.ofNullable(auditHead)));
    }
  }

  static int tell(StoredCheck.Report report) {
    System.out.println(
        report.samples() + " samples, " + report.readings() + " readings: figures computed anew");
    if (report.thinned() > 0) {
      System.out.println(
          report.thinned() + " of the samples are thinned: they have their figures alone");
    }
    System.out.println(
        report.auditEntries() + " entries in the audit chain, the newest is " + report.auditHead());
    report.faults().forEach(fault -> System.err.println("fault: " + fault));
    System.out.println(report.faults().isEmpty() ? "all is well" : "there are faults");
    return report.faults().isEmpty() ? ExitStatus.DONE : ExitStatus.FAILED;
  }
}
