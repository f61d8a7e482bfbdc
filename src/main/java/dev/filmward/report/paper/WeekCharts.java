package dev.filmward.report.paper;

import dev.filmward.film.Role;
import dev.filmward.report.Bounds;
import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.ChartPoint;
import dev.filmward.report.CharacteristicWeek.LaneWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.paper.Block.Figure;
import dev.filmward.report.paper.drawing.ControlChart;
import dev.filmward.report.paper.drawing.ControlFigure;
import dev.filmward.report.paper.drawing.ControlPoint;
import dev.filmward.report.paper.drawing.Drawing;
import dev.filmward.report.paper.drawing.FilmSection;
import dev.filmward.report.paper.drawing.LandSince;
import dev.filmward.report.paper.drawing.LanePoint;
import dev.filmward.report.paper.drawing.LanesChart;
import dev.filmward.report.paper.drawing.LanesFigure;
import dev.filmward.report.paper.drawing.Mark;
import dev.filmward.report.paper.drawing.Ply;
import dev.filmward.report.paper.drawing.SpecLand;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** The drawings of one film's week. Pure. */
final class WeekCharts {
  private static final double CONTROL_PT = 88;
  private static final double LANES_PT = 84;
  private static final double SECTION_PT = 110;
  private static final double GUTTER_PT = 12;
  private static final int NAME_MOST = 48;
  private static final double LEAST_GAP_SECONDS = 3600;
  private static final double GAP_IN_STEPS = 8;

  private final FilmWeek film;
  private final Wording wording;
  private final Texts texts;
  private final double widthPt;

  WeekCharts(FilmWeek film, Wording wording, double widthPt) {
    this.film = film;
    this.wording = wording;
    this.texts = wording.texts();
    this.widthPt = widthPt;
  }

  Figure section() {
    List<Ply> plies = film.plies().stream().map(this::ply).toList();
    Drawing drawing = FilmSection.draw(plies, Math.min(widthPt, 380), SECTION_PT);
    String names = String.join(", ", film.plies().stream().map(FilmWeek.Ply::name).toList());
    return new Figure(
        drawing, texts.say("section.caption"), texts.say("section.alt", "names", names));
  }

  private Ply ply(FilmWeek.Ply ply) {
    OptionalDouble from = ply.targetUm().isPresent() ? ply.targetUm() : ply.meanUm();
    double um = from.isPresent() && from.getAsDouble() > 0 ? from.getAsDouble() : 1;
    String roles =
        String.join(
            " + ", ply.roles().stream().map(role -> texts.called("role", lower(role))).toList());
    String words =
        texts.say(
            "section.ply",
            "role",
            roles,
            "target",
            texts.number(ply.targetUm(), 2),
            "mean",
            texts.number(ply.meanUm(), 2));
    return new Ply(um, Wording.brief(ply.name(), NAME_MOST), words, role(ply));
  }

  private static Optional<Role> role(FilmWeek.Ply ply) {
    return Arrays.stream(Role.values())
        .filter(
            role -> ply.roles().size() == 1 && lower(role.name()).equals(lower(ply.roles().get(0))))
        .findFirst();
  }

  private static String lower(String code) {
    return code.toLowerCase(Locale.ROOT);
  }

  List<Figure> control() {
    return film.characteristics().stream()
        .filter(each -> !each.chart().isEmpty())
        .map(this::control)
        .toList();
  }

  private Figure control(CharacteristicWeek each) {
    Measure measure = Measure.of(each);
    List<ControlPoint> points = points(each, measure);
    ControlPoint last = points.get(points.size() - 1);
    long signals = points.stream().filter(point -> point.signal().isPresent()).count();
    ControlFigure figure =
        new ControlFigure(
            seconds(wording.report().from()),
            seconds(wording.report().to()),
            gap(each.chart()),
            days(),
            moments(each),
            points,
            lands(each, measure),
            texts.say("control.lower", "value", texts.number(last.lower(), measure.decimals())),
            texts.say("control.centre", "value", texts.number(last.centre(), measure.decimals())),
            texts.say("control.upper", "value", texts.number(last.upper(), measure.decimals())),
            texts::number);
    return new Figure(
        ControlChart.draw(figure, widthPt, CONTROL_PT),
        caption(each),
        texts.say(
            "control.alt",
            "name",
            wording.characteristic(each),
            "samples",
            texts.number((double) points.size(), 0),
            "signals",
            texts.number((double) signals, 0)));
  }

  /** Under which specification the samples of the week were made. */
  private List<LandSince> lands(CharacteristicWeek each, Measure measure) {
    List<LandSince> lands = new ArrayList<>();
    for (CharacteristicWeek.EarlierSpec earlier : each.earlier()) {
      lands.add(new LandSince(since(earlier.from()), land(earlier.individual(), measure, texts)));
    }
    lands.add(new LandSince(since(each.since()), land(each.individual(), measure, texts)));
    return lands;
  }

  private double since(Optional<Instant> moment) {
    return seconds(moment.orElse(wording.report().from()));
  }

  /** Readings shown otherwise, of the layer or for the total of all; other specifications. */
  private List<Mark> moments(CharacteristicWeek each) {
    List<Mark> moments = new ArrayList<>(scalings(each));
    Stream.concat(
            each.earlier().stream().flatMap(earlier -> earlier.from().stream()),
            each.since().stream())
        .map(at -> new Mark(seconds(at), texts.say("earlierSpecs.mark")))
        .forEach(moments::add);
    return moments;
  }

  private List<Mark> scalings(CharacteristicWeek each) {
    return film.gauge().scalings().stream()
        .filter(shown -> each.position() == 0 || each.position() == shown.position())
        .map(
            shown ->
                new Mark(
                    seconds(shown.from()),
                    texts.say("scalings.mark", "version", String.valueOf(shown.version()))))
        .distinct()
        .toList();
  }

  private List<ControlPoint> points(CharacteristicWeek each, Measure measure) {
    List<ControlPoint> points = new ArrayList<>();
    for (ChartPoint point : each.chart()) {
      points.add(
          new ControlPoint(
              seconds(point.at()),
              measure.drawn(point.mean()),
              measure.drawn(point.lower()),
              measure.drawn(point.centre()),
              measure.drawn(point.upper()),
              ControlPoint.Membership.JUDGED,
              signal(point)));
    }
    for (FilmWeek.LeftOut out : film.leftOut()) {
      points.add(heldOut(seconds(out.at()), points));
    }
    points.sort(Comparator.comparingDouble(ControlPoint::at));
    return points;
  }

  /** With the limits of the sample before it, so that no limit steps there. */
  private static ControlPoint heldOut(double at, List<ControlPoint> judged) {
    ControlPoint near = judged.get(0);
    for (ControlPoint point : judged) {
      near = point.at() <= at ? point : near;
    }
    return new ControlPoint(
        at,
        Double.NaN,
        near.lower(),
        near.centre(),
        near.upper(),
        ControlPoint.Membership.HELD_OUT,
        Optional.empty());
  }

  /** The short name of the first test on means; of the others, what they look at. */
  private Optional<String> signal(ChartPoint point) {
    if (point.signals().isEmpty()) {
      return Optional.empty();
    }
    String word =
        point.signals().stream()
            .filter(signal -> signal.startsWith("xbar:"))
            .findFirst()
            .orElse(point.signals().get(0));
    String[] parts = word.split(":", -1);
    String code = parts.length < 2 || !parts[0].equals("xbar") ? parts[0] : parts[1];
    return Optional.of(texts.called("test", code));
  }

  /** Much longer than the usual time between samples. */
  private static double gap(List<ChartPoint> points) {
    double[] steps =
        DoubleStream.iterate(1, i -> i < points.size(), i -> i + 1)
            .map(i -> seconds(points.get((int) i).at()) - seconds(points.get((int) i - 1).at()))
            .sorted()
            .toArray();
    double usual = steps.length == 0 ? 0 : steps[steps.length / 2];
    return Math.max(LEAST_GAP_SECONDS, GAP_IN_STEPS * usual);
  }

  private List<Mark> days() {
    List<Mark> days = new ArrayList<>();
    ZonedDateTime day = wording.local(wording.report().from());
    while (day.toInstant().isBefore(wording.report().to())) {
      days.add(new Mark(seconds(day.toInstant()), texts.weekday(day)));
      day = day.plusDays(1);
    }
    return days;
  }

  private static double seconds(Instant at) {
    return at.getEpochSecond();
  }

  List<Figure> spreadAndTrend() {
    SpreadCharts spread = new SpreadCharts(wording, half());
    List<Figure> figures = new ArrayList<>();
    for (CharacteristicWeek each :
        film.characteristics().stream().filter(Wording::isAskedFor).toList()) {
      each.bins().ifPresent(bins -> figures.add(spread.distribution(each, bins, caption(each))));
      if (each.trend().stream().anyMatch(week -> week.ppk().isPresent())) {
        figures.add(spread.trend(each));
      }
    }
    return figures;
  }

  List<Figure> lanes() {
    return film.characteristics().stream()
        .filter(each -> each.lanes().size() > 1 && !each.isShare())
        .map(this::lanes)
        .toList();
  }

  private Figure lanes(CharacteristicWeek each) {
    Measure measure = Measure.of(each);
    List<LanePoint> lanes = each.lanes().stream().map(lane -> lane(lane, measure)).toList();
    LanesFigure figure =
        new LanesFigure(
            lanes,
            land(each.individual(), measure, texts),
            measure.drawn(each.individual().target()),
            texts::number);
    return new Figure(
        LanesChart.draw(figure, half(), LANES_PT),
        caption(each),
        texts.say("lanes.alt", "name", wording.characteristic(each)));
  }

  private static LanePoint lane(LaneWeek lane, Measure measure) {
    double mean = lane.mean() * measure.factor();
    double reach = 3 * measure.drawn(lane.sigma());
    return new LanePoint(String.valueOf(lane.lane()), mean, mean - reach, mean + reach);
  }

  static SpecLand land(Bounds individual, Measure measure, Texts texts) {
    double lower = measure.drawn(individual.lower());
    double upper = measure.drawn(individual.upper());
    return new SpecLand(
        lower,
        upper,
        texts.say("land.below", "value", texts.number(lower, measure.decimals())),
        texts.say("land.above", "value", texts.number(upper, measure.decimals())));
  }

  private String caption(CharacteristicWeek each) {
    return Wording.brief(wording.withUnit(each), NAME_MOST);
  }

  private double half() {
    return (widthPt - GUTTER_PT) / 2;
  }
}
