package dev.filmward.report.paper;

import dev.filmward.report.FilmWeek;
import dev.filmward.report.FilmWeek.AlarmWeek;
import dev.filmward.report.FilmWeek.GaugeWeek;
import dev.filmward.report.FilmWeek.LastStudy;
import dev.filmward.report.FilmWeek.LeftOut;
import dev.filmward.report.FilmWeek.SamplesWeek;
import dev.filmward.report.FilmWeek.ScalingWeek;
import dev.filmward.report.FilmWeek.StudyLayer;
import dev.filmward.report.paper.Block.Facts;
import dev.filmward.report.paper.Block.Facts.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What people and the gauge did in one film's week: alarms, gauge, limits, data, exclusions. Pure.
 */
final class CareTables {
  private static final int LEFT_OUT_SHOWN = 20;

  private final FilmWeek film;
  private final Wording wording;
  private final Texts texts;

  CareTables(FilmWeek film, Wording wording) {
    this.film = film;
    this.wording = wording;
    texts = wording.texts();
  }

  List<Block> alarms(String id) {
    List<Block> blocks = started(id, "alarms");
    AlarmWeek alarms = film.alarms();
    if (alarms.opened() == 0) {
      blocks.add(plain("alarms.none"));
      return blocks;
    }
    blocks.add(
        new Facts(
            List.of(
                fact("alarms.opened", count(alarms.opened())),
                fact("alarms.acknowledged", count(alarms.acknowledged())),
                fact("alarms.median", wording.span(alarms.medianSeconds())),
                fact("alarms.longest", wording.span(alarms.longestSeconds())),
                fact("alarms.unexplained", count(alarms.unexplained())),
                fact("alarms.open", count(alarms.openAtEnd())))));
    if (!alarms.causes().isEmpty()) {
      blocks.add(
          table(
              "causes",
              List.of(words("cause", 5), figures("alarms", 1)),
              alarms.causes().stream()
                  .map(
                      cause ->
                          Block.Table.Row.of(
                              Cell.text(cause.words()),
                              Cell.number((double) cause.alarms(), 0, texts)))
                  .toList()));
    }
    return blocks;
  }

  List<Block> gauge(String id) {
    List<Block> blocks = started(id, "gauge");
    GaugeWeek gauge = film.gauge();
    List<Fact> facts = new ArrayList<>();
    facts.add(fact("gauge.flagged", count(gauge.flagged())));
    facts.add(fact("gauge.heldOut", count(gauge.heldOut())));
    for (Map.Entry<String, Long> kind : new TreeMap<>(gauge.kinds()).entrySet()) {
      String words = texts.called("misread", kind.getKey());
      facts.add(new Fact(texts.say("gauge.kind", "words", words), count(kind.getValue())));
    }
    blocks.add(new Facts(facts));
    if (gauge.calibrations().isEmpty()) {
      blocks.add(plain("calibrations.none"));
    } else {
      blocks.add(calibrations(gauge));
    }
    if (gauge.scalings().isEmpty()) {
      blocks.add(plain("scalings.none"));
    } else {
      blocks.add(scalings(gauge));
      blocks.add(plain("scalings.note"));
    }
    gauge
        .study()
        .ifPresentOrElse(found -> study(blocks, found), () -> blocks.add(plain("study.none")));
    return blocks;
  }

  private Block calibrations(GaugeWeek gauge) {
    return table(
        "calibrations",
        List.of(
            words("at", 2.8),
            words("gauge", 2),
            words("name", 2),
            figures("beforeMps", 1.5),
            figures("foundMps", 1.5),
            figures("uMps", 2.1),
            words("by", 2)),
        gauge.calibrations().stream()
            .map(
                each ->
                    Block.Table.Row.of(
                        Cell.text(wording.moment(each.at())),
                        Cell.text(each.gauge()),
                        Cell.text(each.layer()),
                        Cell.number(each.beforeMps(), 0, texts),
                        Cell.number(each.foundMps(), 0, texts),
                        Cell.number(each.uMps(), 1, texts),
                        Cell.text(wording.by(each.by()))))
            .toList());
  }

  private Block scalings(GaugeWeek gauge) {
    return table(
        "scalings",
        List.of(
            words("at", 2.8),
            words("name", 2),
            figures("version", 1.2),
            figures("factor", 1.6),
            figures("offsetUm", 1.4),
            figures("shownMps", 1.5),
            words("byTemperature", 3),
            words("by", 2)),
        gauge.scalings().stream()
            .map(
                each ->
                    Block.Table.Row.of(
                        Cell.text(wording.moment(each.from())),
                        Cell.text(each.layer()),
                        Cell.number((double) each.version(), 0, texts),
                        Cell.number(each.factor(), 5, texts),
                        Cell.number(each.offsetUm(), 2, texts),
                        Cell.number(each.velocityMps(), 1, texts),
                        Cell.text(temperature(each)),
                        Cell.text(wording.by(each.by()))))
            .toList());
  }

  private String temperature(ScalingWeek each) {
    return each.percentPerKelvin().isEmpty()
        ? texts.say("none")
        : texts.say(
            "scalings.warm",
            "percent",
            texts.number(each.percentPerKelvin(), 2),
            "at",
            texts.number(each.atC(), 1));
  }

  private void study(List<Block> blocks, LastStudy study) {
    blocks.add(
        new Block.Paragraph(
            texts.say(
                "study.last",
                "id",
                study.id(),
                "gauge",
                study.gauge(),
                "at",
                wording.moment(study.finishedAt())),
            Block.Voice.PLAIN));
    if (!study.conclusion().isEmpty()) {
      blocks.add(
          new Block.Paragraph(
              texts.say("study.conclusion", "words", study.conclusion(), "by", study.by()),
              Block.Voice.PLAIN));
    }
    blocks.add(
        table(
            "study",
            List.of(
                words("name", 3),
                figures("sigmaGauge", 2),
                figures("percentTolerance", 2),
                figures("accepted", 3)),
            study.layers().stream().map(this::studyRow).toList()));
    blocks.add(new Block.Paragraph(texts.say("study.note"), Block.Voice.SOFT));
  }

  private Block.Table.Row studyRow(StudyLayer layer) {
    return Block.Table.Row.of(
        Cell.text(layer.layer()),
        Cell.number(layer.sigmaUm(), 3, texts),
        Cell.number(layer.percentTolerance(), 1, texts),
        layer.accepted().isPresent()
            ? Cell.number(100 * layer.accepted().getAsDouble(), 2, texts)
            : Cell.text(texts.say("none")));
  }

  List<Block> limits(String id) {
    List<Block> blocks = started(id, "limits");
    otherwise().ifPresent(blocks::add);
    if (film.limits().isEmpty()) {
      blocks.add(plain("limits.none"));
      return blocks;
    }
    blocks.add(
        table(
            "limits",
            List.of(
                words("at", 2.8),
                figures("version", 1),
                words("state", 2),
                words("by", 2),
                words("reason", 5)),
            film.limits().stream()
                .map(
                    move ->
                        Block.Table.Row.of(
                            Cell.text(wording.moment(move.at())),
                            Cell.number((double) move.version(), 0, texts),
                            Cell.text(texts.called("limitsState", move.state())),
                            Cell.text(wording.by(move.by())),
                            Cell.text(wording.by(move.reason()))))
                .toList()));
    return blocks;
  }

  private Optional<Block> otherwise() {
    List<String> versions = film.gauge().limitsOtherwise().stream().map(String::valueOf).toList();
    return versions.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Block.Paragraph(
                texts.say("limits.otherwise", "versions", String.join(", ", versions)),
                Block.Voice.PLAIN));
  }

  List<Block> samples(String id) {
    List<Block> blocks = started(id, "samples");
    SamplesWeek samples = film.samples();
    List<Fact> facts = new ArrayList<>();
    facts.add(fact("samples.received", count(samples.received())));
    facts.add(
        fact(
            "samples.expected",
            samples.expected() == 0 ? texts.say("samples.notKnown") : count(samples.expected())));
    facts.add(fact("samples.charted", count(samples.charted())));
    facts.add(fact("samples.missing", count(samples.missingReadings())));
    facts.add(fact("samples.changed", count(samples.structureChanged())));
    blocks.add(new Facts(facts));
    return blocks;
  }

  List<Block> leftOut(String id) {
    List<Block> blocks = started(id, "leftOut");
    int all = film.leftOut().size();
    if (all == 0) {
      blocks.add(plain("leftOut.none"));
      return blocks;
    }
    blocks.add(
        leftOutTable("leftOutShown", film.leftOut().stream().limit(LEFT_OUT_SHOWN).toList()));
    if (all > LEFT_OUT_SHOWN) {
      blocks.add(
          new Block.Paragraph(texts.count("leftOut.more", all - LEFT_OUT_SHOWN), Block.Voice.SOFT));
    }
    return blocks;
  }

  Block.Table leftOutTable(String sheet, List<LeftOut> leftOut) {
    return table(
        sheet,
        List.of(
            words("at", 2.8),
            words("roll", 2),
            words("sample", 2),
            words("misread", 4),
            words("state", 2.4),
            words("by", 2),
            words("reason", 4)),
        leftOut.stream().map(this::leftOutRow).toList());
  }

  private Block.Table.Row leftOutRow(LeftOut out) {
    List<String> kinds = out.kinds().stream().map(kind -> texts.called("misread", kind)).toList();
    return Block.Table.Row.of(
        Cell.text(wording.moment(out.at())),
        Cell.text(out.roll()),
        Cell.text(out.sample()),
        Cell.text(wording.by(String.join("; ", kinds))),
        Cell.text(texts.called("screeningState", out.state())),
        Cell.text(wording.by(out.by())),
        Cell.text(wording.by(out.reason())));
  }

  private List<Block> started(String id, String part) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(2, texts.say("part." + part), id + "-" + part));
    return blocks;
  }

  private Block plain(String key) {
    return new Block.Paragraph(texts.say(key), Block.Voice.PLAIN);
  }

  private Fact fact(String key, String value) {
    return new Fact(texts.say(key), value);
  }

  private String count(long n) {
    return texts.number((double) n, 0);
  }

  private Block.Table table(String sheet, List<Column> columns, List<Block.Table.Row> rows) {
    return new Block.Table(
        sheet,
        texts.knows("caption." + sheet) ? texts.say("caption." + sheet) : "",
        List.of(film.line(), film.structure()),
        columns,
        rows);
  }

  private Column words(String key, double weight) {
    return Column.words(texts.say("column." + key), weight);
  }

  private Column figures(String key, double weight) {
    return Column.figures(texts.say("column." + key), weight);
  }
}
