package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.Money;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.Verdict;
import dev.filmward.report.WeeklyReport;
import java.util.ArrayList;
import java.util.List;

/** The first page, for a minute's reading: how many are capable, what to do, what changed. Pure. */
final class FrontPage {
  private static final int CHANGES = 6;

  private final Issue issue;
  private final WeeklyReport report;
  private final Wording wording;
  private final Texts texts;

  private FrontPage(Issue issue, Wording wording) {
    this.issue = issue;
    this.report = issue.report();
    this.wording = wording;
    this.texts = wording.texts();
  }

  static List<Block> blocks(Issue issue, Wording wording) {
    return new FrontPage(issue, wording).all();
  }

  private List<Block> all() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(1, texts.say("title", "week", report.week()), "front"));
    blocks.add(new Block.Paragraph(wording.period(), Block.Voice.SOFT));
    blocks.add(new Block.Paragraph(status(), Block.Voice.SOFT));
    if (report.films().isEmpty()) {
      blocks.add(new Block.Paragraph(texts.say("front.empty"), Block.Voice.GATE));
      return blocks;
    }
    blocks.add(new Block.Paragraph(summary(), Block.Voice.GATE));
    acts(blocks);
    changes(blocks);
    cost(blocks);
    blocks.add(new Block.Heading(2, texts.say("front.films"), "films"));
    blocks.add(films());
    return blocks;
  }

  private String status() {
    return issue.standing().revision() == 0
        ? texts.say("status.draft", "at", wording.moment(report.madeAt()))
        : texts.say(
            "status.issued",
            "revision",
            issue.standing().revision(),
            "at",
            issue.standing().signedAt().map(wording::moment).orElse(texts.say("none")));
  }

  private String summary() {
    long capable = report.count(Verdict.CAPABLE);
    String counted =
        texts.count(
            "front.summary", report.films().size(), "capable", texts.number((double) capable, 0));
    return counted
        + " "
        + texts.say("front.asked", "index", wording.required(), "confidence", wording.confidence());
  }

  private void acts(List<Block> blocks) {
    blocks.add(new Block.Heading(2, texts.say("front.acts"), "acts"));
    List<String> acts =
        report.acts().stream().map(act -> place(act) + " " + act(act.act())).toList();
    if (acts.isEmpty()) {
      blocks.add(new Block.Paragraph(texts.say("front.noActs"), Block.Voice.PLAIN));
    } else {
      blocks.add(new Block.Points(acts, Block.Points.Order.NUMBERED));
      blocks.add(new Block.Paragraph(texts.say("caution.hot"), Block.Voice.SOFT));
    }
  }

  private String place(WeeklyReport.PlantAct act) {
    String layer = act.act().characteristic();
    return layer.isEmpty()
        ? texts.say("act.place", "line", act.line(), "structure", act.structure())
        : texts.say(
            "act.placeOfLayer", "line", act.line(), "structure", act.structure(), "layer", layer);
  }

  private String act(FilmWeek.Act act) {
    String key = "act." + Wording.code(act.kind());
    String required = wording.required();
    return switch (act.kind()) {
      case OUT_OF_SPEC -> texts.say(key, "n", texts.number(act.figure(), 0));
      case BELOW, NOT_SHOWN, WEAK_LANE ->
          texts.say(key, "index", wording.index(act.figure()), "required", required);
      case NOT_STABLE, UNEXPLAINED_ALARMS -> texts.count(key, Math.round(act.figure()));
      case MISREAD, DATA_MISSING -> texts.say(key, "share", wording.percent(act.figure(), 1));
      case NO_LIMITS -> texts.say(key);
      case GIVEAWAY -> texts.say(key, "um", texts.number(act.figure(), 2), "required", required);
    };
  }

  private void changes(List<Block> blocks) {
    blocks.add(new Block.Heading(2, texts.say("front.changes"), "changes"));
    List<String> changes =
        report.films().stream()
            .filter(film -> film.verdict() != film.before())
            .map(
                film ->
                    texts.say(
                        "front.change",
                        "film",
                        wording.film(film),
                        "before",
                        wording.verdict(film.before()),
                        "now",
                        wording.verdict(film.verdict())))
            .toList();
    int same = report.films().size() - changes.size();
    if (!changes.isEmpty()) {
      List<String> first = changes.stream().limit(CHANGES).toList();
      blocks.add(new Block.Points(first, Block.Points.Order.PLAIN));
    }
    if (changes.size() > CHANGES) {
      blocks.add(
          new Block.Paragraph(
              texts.count("front.more", changes.size() - CHANGES), Block.Voice.PLAIN));
    }
    if (same > 0) {
      blocks.add(new Block.Paragraph(texts.count("front.same", same), Block.Voice.PLAIN));
    }
  }

  private void cost(List<Block> blocks) {
    if (!wording.isInternal()) {
      return;
    }
    blocks.add(new Block.Heading(2, texts.say("front.cost"), "cost"));
    List<Money> money = report.money();
    if (money.isEmpty()) {
      blocks.add(new Block.Paragraph(texts.say("front.noCost"), Block.Voice.PLAIN));
    }
    for (Money sum : money) {
      blocks.add(
          new Block.Paragraph(
              texts.say(
                  sum.amount() < 0 ? "front.costNegative" : "front.costs",
                  "amount",
                  texts.number(sum.amount(), 0),
                  "currency",
                  sum.currency(),
                  "asOf",
                  sum.priceAsOf(),
                  "required",
                  wording.required()),
              Block.Voice.PLAIN));
    }
  }

  private Block films() {
    List<Column> columns =
        List.of(
            Column.words(texts.say("column.line"), 2.2),
            Column.words(texts.say("column.structure"), 3),
            Column.words(texts.say("column.verdict"), 2.6),
            Column.words(texts.say("column.why"), 6),
            Column.words(texts.say("column.before"), 2.4));
    List<Block.Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < report.films().size(); i++) {
      rows.add(row(report.films().get(i), Composer.idOf(i)));
    }
    return new Block.Table("films", "", List.of(), columns, rows);
  }

  private Block.Table.Row row(FilmWeek film, String id) {
    Cell.Tone tone =
        film.verdict() == Verdict.BELOW || film.verdict() == Verdict.NOT_STABLE
            ? Cell.Tone.ACT
            : Cell.Tone.STRONG;
    return Block.Table.Row.of(
        Cell.text(film.line()),
        Cell.text(film.structure()).leadingTo(id),
        Cell.text(wording.verdict(film.verdict())).toned(tone),
        Cell.text(Reasons.of(film, wording)),
        Cell.text(wording.verdict(film.before())).toned(Cell.Tone.SOFT));
  }

  /** Of all characteristics that have an index. */
  static List<CharacteristicWeek> indexed(FilmWeek film) {
    return film.characteristics().stream().filter(each -> each.index().ppk().isPresent()).toList();
  }
}
