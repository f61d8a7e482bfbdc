package dev.filmward.report.paper;

import java.util.ArrayList;
import java.util.List;

/** How the figures were worked out, with published sources, and the cautions. Pure. */
final class MethodPage {
  private static final List<String> METHODS =
      List.of(
          "charts",
          "tests",
          "gate",
          "within",
          "overall",
          "cp",
          "pp",
          "confidence",
          "effective",
          "normality",
          "percentiles",
          "ppm",
          "lanes",
          "giveaway",
          "gauge",
          "guard",
          "alarms");
  private static final List<String> CAUTIONS = List.of("interlock", "hot", "release");

  private MethodPage() {}

  static List<Block> blocks(Texts texts) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(1, texts.say("method.title"), "method"));
    blocks.add(new Block.Paragraph(texts.say("method.lead"), Block.Voice.PLAIN));
    blocks.add(
        new Block.Table(
            "method",
            "",
            List.of(),
            List.of(
                Column.words(texts.say("method.what"), 2),
                Column.words(texts.say("method.formula"), 5),
                Column.words(texts.say("method.source"), 4)),
            METHODS.stream().map(method -> row(method, texts)).toList()));
    blocks.add(cautionsHeading(texts));
    blocks.add(cautions(texts));
    return blocks;
  }

  private static Block.Table.Row row(String method, Texts texts) {
    return Block.Table.Row.of(
        Cell.text(texts.say("method.what." + method)),
        Cell.text(texts.say("method.formula." + method)),
        Cell.text(texts.say("method.source." + method)));
  }

  private static Block cautionsHeading(Texts texts) {
    return new Block.Heading(2, texts.say("cautions"), "cautions");
  }

  static Block cautions(Texts texts) {
    return new Block.Points(
        CAUTIONS.stream().map(caution -> texts.say("caution." + caution)).toList(),
        Block.Points.Order.PLAIN);
  }
}
