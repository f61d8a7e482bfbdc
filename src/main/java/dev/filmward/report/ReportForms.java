package dev.filmward.report;

import dev.filmward.report.paper.PaperForm;
import java.util.Locale;

/** The forms that a report can be had in. */
public final class ReportForms {
  private ReportForms() {}

  /**
   * A form as a file.
   *
   * @param ending of its name, without the point
   * @param mediaType as in a Content-Type header
   */
  public record NamedForm(String ending, String mediaType, ReportForm form) {}

  /**
   * The form that a file's name, or an ending alone, asks for.
   *
   * @throws IllegalArgumentException with the endings there are
   */
  public static NamedForm byEnding(String fileName) {
    String ending = fileName.substring(fileName.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    if (ending.equals("json")) {
      return new NamedForm(
          ending,
          "application/json",
          (issue, choice, out) -> out.write(ReportJson.write(issue.report())));
    }
    for (PaperForm form : PaperForm.values()) {
      if (form.ending().equals(ending)) {
        return new NamedForm(ending, form.mediaType(), form);
      }
    }
    throw new IllegalArgumentException(
        "\"" + fileName + "\": a report is written as .pdf, .html, .xlsx or .json");
  }
}
