package dev.filmward.report.paper;

import dev.filmward.report.ReportForm;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** The paper forms of a report. The same issue and choice give the same bytes. Thread-safe. */
public enum PaperForm implements ReportForm {
  PDF("pdf", "application/pdf") {
    @Override
    byte[] bytes(Issue issue, Choice choice, Texts texts) throws IOException {
      return Pdf.of(
          Composer.paper(issue, texts, Sheet.of(choice.size()).contentPt()),
          Sheet.of(choice.size()));
    }
  },
  /** One page that stands alone: style, fonts and drawings are within. */
  HTML("html", "text/html; charset=utf-8") {
    @Override
    byte[] bytes(Issue issue, Choice choice, Texts texts) {
      Paper paper = Composer.paper(issue, texts, Sheet.A4.contentPt());
      return Standalone.of(paper, texts).getBytes(StandardCharsets.UTF_8);
    }
  },
  /** The figures, and those behind the drawings. */
  SPREADSHEET("xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet") {
    @Override
    byte[] bytes(Issue issue, Choice choice, Texts texts) throws IOException {
      return Spreadsheet.of(Composer.paper(issue, texts, Sheet.A4.contentPt()), texts);
    }
  };

  private final String ending;
  private final String mediaType;

  PaperForm(String ending, String mediaType) {
    this.ending = ending;
    this.mediaType = mediaType;
  }

  /** Of a file's name, without the point. */
  public String ending() {
    return ending;
  }

  /** As in a Content-Type header. */
  public String mediaType() {
    return mediaType;
  }

  abstract byte[] bytes(Issue issue, Choice choice, Texts texts) throws IOException;

  @Override
  public void write(Issue issue, Choice choice, OutputStream out) throws IOException {
    Texts texts = new Texts(Language.of(choice.language()));
    out.write(bytes(issue, choice, texts));
  }
}
