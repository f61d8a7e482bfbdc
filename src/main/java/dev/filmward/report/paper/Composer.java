package dev.filmward.report.paper;

import dev.filmward.report.FilmWeek;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.WeeklyReport;
import java.util.ArrayList;
import java.util.List;

/** Takes an issue of a report, gives it as a paper in one language. Pure. */
final class Composer {
  private static final int DIGEST_SHOWN = 16;

  private Composer() {}

  /**
   * Composes it.
   *
   * @param widthPt between the margins, which drawings fill
   */
  static Paper paper(Issue issue, Texts texts, double widthPt) {
    WeeklyReport report = issue.report();
    Wording wording = new Wording(texts, report);
    List<Block> blocks = new ArrayList<>(FrontPage.blocks(issue, wording));
    List<Block.Table> behind = new ArrayList<>();
    for (int i = 0; i < report.films().size(); i++) {
      FilmWeek film = report.films().get(i);
      blocks.addAll(new FilmPages(film, wording, widthPt).blocks(idOf(i)));
      behind.addAll(Behind.tables(film, wording));
    }
    blocks.addAll(IssuePage.blocks(issue, wording));
    blocks.addAll(MethodPage.blocks(texts));
    return new Paper(
        texts.language(),
        texts.say("title", "week", report.week()),
        wording.period(),
        texts.say("head", "week", report.week(), "period", wording.period()),
        foot(issue, wording),
        issue.standing().signedAt().orElse(report.madeAt()),
        blocks,
        behind);
  }

  /** Of the heading of a film, by its place in the report. */
  static String idOf(int film) {
    return "film-" + (film + 1);
  }

  private static String foot(Issue issue, Wording wording) {
    String edition = wording.texts().say("edition." + Wording.code(issue.report().edition()));
    if (issue.standing().revision() == 0) {
      return wording.texts().say("foot.draft", "edition", edition);
    }
    String digest = issue.standing().digest();
    return wording
        .texts()
        .say(
            "foot.issued",
            "edition",
            edition,
            "revision",
            issue.standing().revision(),
            "digest",
            digest.substring(0, Math.min(DIGEST_SHOWN, digest.length())));
  }
}
