package dev.filmward.report;

import dev.filmward.report.paper.PaperForm;
import java.util.Locale;

/** The forms that a report can be had in. */
public final class ReportForms {
  private static final ReportForm JSON =
      (issue, choice, out) -> out.write(ReportJson.write(issue.report()));

  private ReportForms() {}

  /**
   * The form that a file's ending names.
   *
   * @throws IllegalArgumentException with the endings there are
   */
  public static ReportForm byEnding(String fileName) {
    String ending = fileName.substring(fileName.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return switch (ending) {
      case "json" -> JSON;
      case "pdf" -> PaperForm.PDF;
      case "html" -> PaperForm.HTML;
      case "xlsx" -> PaperForm.SPREADSHEET;
      default ->
          throw new IllegalArgumentException(
              "\"" + fileName + "\": a report is written as .pdf, .html, .xlsx or .json");
    };
  }
}
