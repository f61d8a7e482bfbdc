package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.Bins;
import dev.filmward.report.CharacteristicWeek.ChartPoint;
import dev.filmward.report.FilmWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The figures behind the drawings of one film, which only the workbook has. Pure. */
final class Behind {
  private final FilmWeek film;
  private final Wording wording;
  private final Texts texts;

  private Behind(FilmWeek film, Wording wording) {
    this.film = film;
    this.wording = wording;
    texts = wording.texts();
  }

  static List<Block.Table> tables(FilmWeek film, Wording wording) {
    return new Behind(film, wording).all();
  }

  private List<Block.Table> all() {
    List<Block.Table> tables = new ArrayList<>();
    tables.add(points());
    tables.add(lanes());
    tables.add(trend());
    tables.add(bins());
    tables.add(new CareTables(film, wording).leftOutTable("leftOut", film.leftOut()));
    return tables;
  }

  private Block.Table points() {
    List<Block.Table.Row> rows = new ArrayList<>();
    for (CharacteristicWeek each : film.characteristics()) {
      Measure measure = Measure.of(each);
      for (ChartPoint point : each.chart()) {
        rows.add(
            Block.Table.Row.of(
                Cell.text(wording.characteristic(each)),
                Cell.text(wording.local(point.at()).toOffsetDateTime().toString()),
                Cell.text(point.roll()),
                Cell.text(point.sample()),
                measure.cell(point.mean(), texts),
                measure.cell(point.range(), texts),
                measure.cell(point.lower(), texts),
                measure.cell(point.centre(), texts),
                measure.cell(point.upper(), texts),
                Cell.text(String.join(" ", point.signals()))));
      }
    }
    return table(
        "points",
        List.of(
            "name", "at", "roll", "sample", "mean", "range", "lower", "centre", "upper", "signals"),
        rows);
  }

  private Block.Table lanes() {
    List<Block.Table.Row> rows = new ArrayList<>();
    for (CharacteristicWeek each : film.characteristics()) {
      Measure measure = Measure.of(each);
      for (CharacteristicWeek.LaneWeek lane : each.lanes()) {
        rows.add(
            Block.Table.Row.of(
                Cell.text(wording.characteristic(each)),
                Cell.text(measure.unit()),
                number(lane.lane()),
                number((double) lane.readings()),
                measure.cell(OptionalDouble.of(lane.mean()), texts),
                measure.spread(lane.sigma(), texts),
                Cell.number(lane.ppk(), Wording.INDEX_DECIMALS, texts)));
      }
    }
    return table(
        "lanes",
        List.of("name", "unit", "lane", "laneReadings", "laneMean", "laneSigma", "lanePpk"),
        rows);
  }

  private Block.Table trend() {
    List<Block.Table.Row> rows = new ArrayList<>();
    for (CharacteristicWeek each : film.characteristics()) {
      Measure measure = Measure.of(each);
      for (CharacteristicWeek.TrendWeek week : each.trend()) {
        rows.add(
            Block.Table.Row.of(
                Cell.text(wording.characteristic(each)),
                Cell.text(measure.unit()),
                Cell.text(week.week()),
                Cell.text(
                    week.individual()
                        .map(bounds -> wording.bounds(bounds, measure))
                        .orElse(texts.say("none"))),
                number((double) week.samples()),
                measure.cell(week.mean(), texts),
                measure.spread(week.sigmaOverall(), texts),
                Cell.number(week.ppk(), Wording.INDEX_DECIMALS, texts),
                Cell.number(week.atLeast(), Wording.INDEX_DECIMALS, texts),
                Cell.text(texts.say(week.stable() ? "stable.yes" : "stable.no"))));
      }
    }
    return table(
        "trend",
        List.of(
            "name",
            "unit",
            "weekOf",
            "individual",
            "samples",
            "mean",
            "overall",
            "ppk",
            "atLeast",
            "stable"),
        rows);
  }

  private Block.Table bins() {
    List<Block.Table.Row> rows = new ArrayList<>();
    for (CharacteristicWeek each : film.characteristics()) {
      each.bins().ifPresent(bins -> rows.addAll(rows(each, bins)));
    }
    return table("bins", List.of("name", "unit", "from", "to", "readings"), rows);
  }

  private List<Block.Table.Row> rows(CharacteristicWeek each, Bins bins) {
    Measure measure = Measure.of(each);
    List<Block.Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < bins.counts().size(); i++) {
      double from = bins.start() + i * bins.width();
      rows.add(
          Block.Table.Row.of(
              Cell.text(wording.characteristic(each)),
              Cell.text(measure.unit()),
              measure.spread(OptionalDouble.of(from), texts),
              measure.spread(OptionalDouble.of(from + bins.width()), texts),
              number(bins.counts().get(i))));
    }
    return rows;
  }

  private Cell number(double n) {
    return Cell.number(n, 0, texts);
  }

  private Block.Table table(String sheet, List<String> columns, List<Block.Table.Row> rows) {
    return new Block.Table(
        sheet,
        "",
        List.of(film.line(), film.structure()),
        columns.stream().map(key -> Column.words(texts.say("column." + key), 1)).toList(),
        rows);
  }
}
