package dev.filmward.report.paper;

import dev.filmward.report.ReportChange;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.WeeklyReport;
import dev.filmward.report.paper.Block.Facts;
import dev.filmward.report.paper.Block.Facts.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Who stands for the report, in which revision, and what it was made from. Pure. */
final class IssuePage {
  private static final String LANE = "lane ";
  private static final int CHANGED_DECIMALS = 4;

  private final Standing standing;
  private final WeeklyReport report;
  private final Wording wording;
  private final Texts texts;

  private IssuePage(Issue issue, Wording wording) {
    standing = issue.standing();
    report = issue.report();
    this.wording = wording;
    texts = wording.texts();
  }

  static List<Block> blocks(Issue issue, Wording wording) {
    return new IssuePage(issue, wording).all();
  }

  private List<Block> all() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(1, texts.say("issue.title"), "issue"));
    blocks.add(new Facts(standing.revision() == 0 ? draft() : issued()));
    if (!standing.changes().isEmpty()) {
      blocks.add(new Block.Heading(2, texts.say("issue.changes"), "issue-changes"));
      blocks.add(changes());
    }
    blocks.add(new Block.Heading(2, texts.say("issue.madeFrom"), "issue-from"));
    blocks.add(new Facts(madeFrom()));
    return blocks;
  }

  private List<Fact> draft() {
    return List.of(
        fact("issue.state", texts.say("issue.draft")),
        fact("issue.signedBy", texts.say("issue.blank")),
        fact("issue.signedAt", texts.say("issue.blank")));
  }

  private List<Fact> issued() {
    List<Fact> facts = new ArrayList<>();
    facts.add(fact("issue.state", texts.say("issue.issued", "revision", standing.revision())));
    if (wording.isInternal()) {
      facts.add(fact("issue.signedBy", wording.by(standing.signedBy())));
      facts.add(fact("issue.reason", wording.by(standing.reason())));
    }
    facts.add(
        fact("issue.signedAt", standing.signedAt().map(wording::moment).orElse(texts.say("none"))));
    facts.add(fact("issue.digest", standing.digest()));
    return facts;
  }

  private Block changes() {
    return new Block.Table(
        "revision",
        texts.say("caption.revision"),
        List.of(),
        List.of(
            Column.words(texts.say("column.line"), 2),
            Column.words(texts.say("column.structure"), 2.4),
            Column.words(texts.say("column.name"), 2),
            Column.words(texts.say("column.figure"), 2),
            Column.words(texts.say("column.wasBefore"), 2.5),
            Column.words(texts.say("column.isNow"), 2.5)),
        standing.changes().stream().map(this::row).toList());
  }

  private Block.Table.Row row(ReportChange change) {
    return Block.Table.Row.of(
        Cell.text(change.line()),
        Cell.text(change.structure()),
        Cell.text(characteristic(change.characteristic())),
        Cell.text(figure(change.figure())),
        Cell.text(value(change.figure(), change.before())),
        Cell.text(value(change.figure(), change.after())));
  }

  /** A lane's mean has the lane behind its code. */
  private String figure(String code) {
    return code.startsWith(LANE)
        ? texts.say("figure.lane", "lane", code.substring(LANE.length()))
        : texts.called("figure", code);
  }

  /** Its kind is a word of ours, its name is the plant's. */
  private String characteristic(String written) {
    int end = written.indexOf(' ');
    String kind = end < 0 ? written : written.substring(0, end);
    return written.isEmpty()
        ? texts.say("none")
        : texts.called("characteristicKind", kind) + written.substring(kind.length());
  }

  private String value(String figure, String written) {
    if (written.isEmpty()) {
      return texts.say("none");
    }
    if (figure.equals("verdict") || figure.equals("kind")) {
      return texts.called(figure, written.toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    if (figure.equals("data")) {
      return written;
    }
    try {
      int decimals = written.indexOf('.') < 0 ? 0 : CHANGED_DECIMALS;
      return texts.number(Double.parseDouble(written), decimals);
    } catch (NumberFormatException notANumber) {
      return written;
    }
  }

  private List<Fact> madeFrom() {
    WeeklyReport.Intake intake = report.intake();
    return List.of(
        fact("from.made", wording.moment(report.madeAt())),
        fact("from.version", report.version()),
        fact("from.zone", report.zone()),
        fact(
            "from.asked",
            texts.say(
                "from.askedValue",
                "index",
                wording.required(),
                "confidence",
                wording.confidence())),
        fact("from.files", count(intake.files())),
        fact("from.refused", count(intake.refused())),
        fact("from.readings", count(intake.readings())),
        fact("from.quarantined", count(intake.quarantined())),
        fact("from.mended", count(intake.mended())),
        fact("from.digest", report.dataDigest()));
  }

  private Fact fact(String key, String value) {
    return new Fact(texts.say(key), value);
  }

  private String count(long n) {
    return texts.number((double) n, 0);
  }
}
