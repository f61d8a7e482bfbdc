package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.EarlierSpec;
import dev.filmward.report.CharacteristicWeek.GiveawayWeek;
import dev.filmward.report.CharacteristicWeek.LaneWeek;
import dev.filmward.report.CharacteristicWeek.Money;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.IndexWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The tables of figures of one film, a row for each layer, the total and each share. Pure. */
final class FigureTables {
  private final FilmWeek film;
  private final Wording wording;
  private final Texts texts;

  FigureTables(FilmWeek film, Wording wording) {
    this.film = film;
    this.wording = wording;
    texts = wording.texts();
  }

  Block.Table thickness() {
    return table(
        "thickness",
        List.of(
            words("name", 2.6),
            words("unit", 1.35),
            figures("target", 1.5),
            figures("individual", 2.3),
            figures("average", 2.3),
            figures("readings", 1.9),
            figures("effective", 1.6),
            figures("mean", 1.4),
            figures("within", 1.5),
            figures("overall", 1.5),
            figures("observedPpm", 2.1),
            figures("expectedPpm", 1.9)),
        film.characteristics().stream().map(this::thicknessRow).toList());
  }

  private Block.Table.Row thicknessRow(CharacteristicWeek each) {
    Measure measure = Measure.of(each);
    return Block.Table.Row.of(
        Cell.text(wording.characteristic(each)),
        Cell.text(measure.unit()),
        measure.cell(each.individual().target(), texts),
        Cell.text(wording.bounds(each.individual(), measure)),
        Cell.text(wording.bounds(each.average(), measure)),
        Cell.number((double) each.readings(), 0, texts),
        Cell.number(each.effective(), 0, texts),
        measure.cell(each.mean(), texts),
        measure.spread(each.sigmaWithin(), texts),
        measure.spread(each.sigmaOverall(), texts),
        Cell.number(each.observedPpm(), 0, texts),
        Cell.number(each.expectedPpm(), 0, texts));
  }

  /** What was made in the week before a specification changed, by the one that held then. */
  List<Block> earlierSpecs() {
    List<Block.Table.Row> rows = new ArrayList<>();
    for (CharacteristicWeek each : film.characteristics()) {
      each.earlier().forEach(earlier -> rows.add(earlierRow(each, earlier)));
    }
    if (rows.isEmpty()) {
      return List.of();
    }
    Block table =
        table(
            "earlierSpecs",
            List.of(
                words("name", 2.2),
                words("from", 2.4),
                figures("individual", 2.2),
                figures("average", 2.2),
                figures("readings", 2.1),
                figures("mean", 1.3),
                figures("observedPpm", 2.3),
                figures("ppk", 1.1),
                figures("atLeast", 1.3),
                words("called", 2.7),
                words("standing", 2.7)),
            rows);
    return List.of(table, new Block.Paragraph(texts.say("earlierSpecs.note"), Block.Voice.SOFT));
  }

  private Block.Table.Row earlierRow(CharacteristicWeek each, EarlierSpec earlier) {
    Measure measure = Measure.of(each);
    IndexWeek index = earlier.index();
    return Block.Table.Row.of(
        Cell.text(wording.withUnit(each)),
        Cell.text(wording.moment(earlier.from().orElse(wording.report().from()))),
        Cell.text(wording.bounds(earlier.individual(), measure)),
        Cell.text(wording.bounds(earlier.average(), measure)),
        Cell.number((double) earlier.readings(), 0, texts),
        measure.cell(earlier.mean(), texts),
        Cell.number(earlier.observedPpm(), 0, texts),
        index(index.ppk()),
        index(index.atLeast()),
        Cell.text(called(index)),
        standing(index));
  }

  private Cell standing(IndexWeek index) {
    Cell standing = Cell.text(texts.say("standing." + Wording.code(index.standing())));
    return index.standing() == IndexWeek.Standing.BELOW ? standing.toned(Cell.Tone.ACT) : standing;
  }

  Block.Table indices() {
    return table(
        "indices",
        List.of(
            words("name", 3),
            words("called", 3.2),
            figures("cp", 1.1),
            figures("cpk", 1.1),
            figures("pp", 1.1),
            figures("ppk", 1.4),
            figures("atLeast", 1.3),
            figures("interval", 2.2),
            figures("averages", 1.5),
            figures("lastWeek", 1.8),
            words("shape", 2.8),
            words("standing", 2.6)),
        asked().map(this::indexRow).toList());
  }

  private Stream<CharacteristicWeek> asked() {
    return film.characteristics().stream().filter(Wording::isAskedFor);
  }

  private Block.Table.Row indexRow(CharacteristicWeek each) {
    IndexWeek index = each.index();
    return Block.Table.Row.of(
        Cell.text(wording.characteristic(each)),
        Cell.text(called(index)),
        index(index.cp()),
        index(index.cpk()),
        index(index.pp()),
        index(index.ppk()),
        index(index.atLeast()),
        Cell.text(interval(index)),
        index(each.averages()),
        index(lastWeek(each)),
        Cell.text(shape(each)),
        standing(index));
  }

  /** Capability, performance or nothing, and why. */
  private String called(IndexWeek index) {
    return texts.say(
        "called",
        "kind",
        texts.say("kind." + Wording.code(index.kind())),
        "why",
        texts.say("why." + Wording.code(index.why())));
  }

  private String interval(IndexWeek index) {
    return index.from().isEmpty() || index.to().isEmpty()
        ? texts.say("none")
        : texts.say("range", "from", wording.index(index.from()), "to", wording.index(index.to()));
  }

  private String shape(CharacteristicWeek each) {
    String shape = texts.say("shape." + each.shape().word().replace('_', '-'));
    return each.index().kind() == IndexWeek.Kind.NONE
        ? shape
        : texts.say(
            "shapeAndMethod",
            "shape",
            shape,
            "method",
            texts.say("indexMethod." + Wording.code(each.index().method())));
  }

  /** The last but one of the trend, whose last is this week. */
  private static OptionalDouble lastWeek(CharacteristicWeek each) {
    List<TrendWeek> trend = each.trend();
    return trend.size() < 2 ? OptionalDouble.empty() : trend.get(trend.size() - 2).ppk();
  }

  Block.Table lanes() {
    return table(
        "worstLanes",
        List.of(
            words("name", 3),
            words("unit", 1.1),
            figures("lanes", 1),
            figures("worstLane", 1.2),
            figures("laneReadings", 1.5),
            figures("laneMean", 1.5),
            figures("laneSigma", 1.5),
            figures("lanePpk", 1.5),
            figures("laneShare", 2)),
        asked().map(this::laneRow).toList());
  }

  private Block.Table.Row laneRow(CharacteristicWeek each) {
    Measure measure = Measure.of(each);
    Optional<LaneWeek> worst = each.worstLane();
    return Block.Table.Row.of(
        Cell.text(wording.characteristic(each)),
        Cell.text(measure.unit()),
        Cell.number((double) each.lanes().size(), 0, texts),
        count(worst.map(lane -> (long) lane.lane())),
        count(worst.map(LaneWeek::readings)),
        measure.cell(optional(worst.map(LaneWeek::mean)), texts),
        measure.spread(worst.map(LaneWeek::sigma).orElse(OptionalDouble.empty()), texts),
        index(worst.map(LaneWeek::ppk).orElse(OptionalDouble.empty())),
        Cell.number(100 * each.laneShare(), 0, texts));
  }

  List<Block> giveaway() {
    List<CharacteristicWeek> known =
        film.characteristics().stream().filter(each -> each.giveaway().isPresent()).toList();
    if (known.isEmpty()) {
      return List.of(new Block.Paragraph(texts.say("giveaway.none"), Block.Voice.PLAIN));
    }
    Block table =
        table(
            "giveaway",
            List.of(
                words("name", 3),
                figures("nominal", 2),
                figures("achievable", 2),
                figures("gPerM2", 1.5),
                figures("kgPerHour", 1.5),
                figures("money", 1.8),
                words("currency", 1.2),
                words("priceAsOf", 1.8)),
            known.stream().map(this::giveawayRow).toList());
    return List.of(table, new Block.Paragraph(texts.say("giveaway.note"), Block.Voice.SOFT));
  }

  private Block.Table.Row giveawayRow(CharacteristicWeek each) {
    GiveawayWeek found = each.giveaway().orElseThrow();
    Optional<Money> money = found.money();
    return Block.Table.Row.of(
        Cell.text(wording.characteristic(each)),
        Cell.number(found.nominalUm(), 2, texts),
        Cell.number(found.achievableUm(), 2, texts),
        Cell.number(found.gPerM2(), 2, texts),
        Cell.number(found.kgPerHour(), 2, texts),
        Cell.number(optional(money.map(Money::amount)), 0, texts),
        Cell.text(money.map(Money::currency).orElse(texts.say("none"))),
        Cell.text(money.map(Money::priceAsOf).orElse(texts.say("none"))));
  }

  private Cell index(OptionalDouble value) {
    return wording.indexCell(value);
  }

  private Cell count(Optional<Long> n) {
    return Cell.number(optional(n.map(Long::doubleValue)), 0, texts);
  }

  private static OptionalDouble optional(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
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
