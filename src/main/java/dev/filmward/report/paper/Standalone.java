package dev.filmward.report.paper;

/** Takes a paper, gives one page of HTML that needs nothing from outside. Pure. */
final class Standalone {
  private Standalone() {}

  static String of(Paper paper, Texts texts) {
    StringBuilder page = new StringBuilder(300_000);
    page.append("<!DOCTYPE html>\n<html lang=\"").append(paper.language().code());
    page.append("\" xmlns=\"http://www.w3.org/1999/xhtml\">\n<head><meta charset=\"utf-8\"/>");
    page.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>");
    page.append("<title>").append(text(paper.title())).append("</title>\n<style>\n");
    page.append(Styles.screen()).append("</style></head>\n<body>\n<header class=\"head\">");
    page.append(text(paper.head())).append("</header>\n<nav aria-label=\"");
    page.append(text(texts.say("contents"))).append("\"><ul>");
    for (Block block : paper.blocks()) {
      if (block instanceof Block.Heading heading && heading.level() == 1) {
        page.append("<li><a href=\"#").append(Escaped.of(heading.id())).append("\">");
        page.append(text(heading.text())).append("</a></li>");
      }
    }
    page.append("</ul></nav>\n<main>\n");
    page.append(new Markup(Medium.SCREEN).body(paper.blocks()));
    page.append("</main>\n<footer class=\"foot\">").append(text(paper.foot()));
    return page.append("</footer>\n</body></html>\n").toString();
  }

  private static String text(String text) {
    return Escaped.of(Escaped.printable(text));
  }
}
