package dev.filmward.report;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A form that a report is written in. Thread-safe. */
public interface ReportForm {
  /** Writes a report; the stream stays open. */
  void write(Issue issue, Choice choice, OutputStream out) throws IOException;

  /** Where a report stands: a draft, or frozen and signed. */
  record Issue(WeeklyReport report, Standing standing) {}

  /**
   * What is known of its life.
   *
   * @param revision 0 for a draft, from 1 on issued
   * @param signedBy and the rest are empty for a draft
   * @param changes what a later revision changed, in short sentences of facts
   * @param digest SHA-256 of the frozen report
   */
  record Standing(
      int revision,
      String signedBy,
      Optional<Instant> signedAt,
      String reason,
      List<ReportChange> changes,
      String digest) {
    public static final Standing DRAFT = new Standing(0, "", Optional.empty(), "", List.of(), "");
  }

  /**
   * In what language and on what paper.
   *
   * @param language en or de
   */
  record Choice(String language, Size size) {}

  /** Paper. */
  enum Size {
    A4,
    LETTER
  }
}
