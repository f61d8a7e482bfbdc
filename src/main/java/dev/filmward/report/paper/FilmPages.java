package dev.filmward.report.paper;

import dev.filmward.report.FilmWeek;
import java.util.ArrayList;
import java.util.List;

/** The pages of one film on one line. Pure. */
final class FilmPages {
  private final FilmWeek film;
  private final Wording wording;
  private final Texts texts;
  private final WeekCharts charts;

  FilmPages(FilmWeek film, Wording wording, double widthPt) {
    this.film = film;
    this.wording = wording;
    texts = wording.texts();
    charts = new WeekCharts(film, wording, widthPt);
  }

  List<Block> blocks(String id) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(1, wording.film(film), id));
    if (!film.name().isEmpty() && !film.name().equals(film.structure())) {
      blocks.add(new Block.Paragraph(film.name(), Block.Voice.LEAD));
    }
    blocks.add(
        new Block.Paragraph(
            texts.say(
                "film.verdict",
                "verdict",
                wording.verdict(film.verdict()),
                "reason",
                Reasons.of(film, wording)),
            Block.Voice.GATE));
    if (!film.plies().isEmpty()) {
      blocks.add(new Block.Figures(List.of(charts.section())));
    }
    if (film.samples().charted() > 0) {
      measured(blocks, id);
    }
    CareTables care = new CareTables(film, wording);
    blocks.addAll(care.alarms(id));
    blocks.addAll(care.gauge(id));
    blocks.addAll(care.limits(id));
    blocks.addAll(care.samples(id));
    blocks.addAll(care.leftOut(id));
    return blocks;
  }

  private void measured(List<Block> blocks, String id) {
    FigureTables tables = new FigureTables(film, wording);
    heading(blocks, id, "figures");
    blocks.add(tables.thickness());
    blocks.addAll(tables.earlierSpecs());
    blocks.add(tables.indices());
    blocks.add(new Block.Paragraph(texts.say("indices.note"), Block.Voice.SOFT));
    heading(blocks, id, "week");
    blocks.add(new Block.Paragraph(texts.say("week.note"), Block.Voice.SOFT));
    blocks.add(new Block.Figures(charts.control()));
    heading(blocks, id, "spread");
    blocks.add(new Block.Paragraph(texts.say("spread.note"), Block.Voice.SOFT));
    blocks.add(new Block.Figures(charts.spreadAndTrend()));
    heading(blocks, id, "lanes");
    blocks.add(new Block.Paragraph(texts.say("lanes.note"), Block.Voice.SOFT));
    blocks.add(new Block.Figures(charts.lanes()));
    blocks.add(tables.lanes());
    if (wording.isInternal()) {
      heading(blocks, id, "giveaway");
      blocks.addAll(tables.giveaway());
    }
  }

  private void heading(List<Block> blocks, String id, String part) {
    blocks.add(new Block.Heading(2, texts.say("part." + part), id + "-" + part));
  }
}
