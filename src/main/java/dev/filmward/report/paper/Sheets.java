package dev.filmward.report.paper;

/** Takes a paper, gives the document that the PDF is set from. Pure. */
final class Sheets {
  private Sheets() {}

  static String document(Paper paper, String style, String body) {
    return "<!DOCTYPE html>\n<html lang=\""
        + paper.language().code()
        + "\" xmlns=\"http://www.w3.org/1999/xhtml\"><head><title>"
        + text(paper.title())
        + "</title><meta name=\"subject\" content=\""
        + text(paper.subject())
        + "\"/><meta name=\"description\" content=\""
        + text(paper.subject())
        + "\"/>"
        + bookmarks(paper)
        + "<style>"
        + style
        + "</style></head><body><div class=\"head\">"
        + text(paper.head())
        + "</div><div class=\"foot\">"
        + text(paper.foot())
        + "</div>\n"
        + body
        + "</body></html>";
  }

  private static String bookmarks(Paper paper) {
    StringBuilder marks = new StringBuilder("<bookmarks>");
    for (Block block : paper.blocks()) {
      if (block instanceof Block.Heading heading && heading.level() == 1) {
        marks.append("<bookmark name=\"").append(Escaped.of(Escaped.printable(heading.text())));
        marks.append("\" href=\"#").append(Escaped.of(heading.id())).append("\"/>");
      }
    }
    return marks.append("</bookmarks>").toString();
  }

  private static String text(String text) {
    return Escaped.of(Visible.of(text));
  }
}
