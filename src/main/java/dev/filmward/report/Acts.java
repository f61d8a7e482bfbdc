package dev.filmward.report;

import dev.filmward.film.Characteristic;
import dev.filmward.report.CharacteristicWeek.EarlierSpec;
import dev.filmward.report.FilmWeek.Act;
import dev.filmward.report.FilmWeek.SamplesWeek;
import dev.filmward.report.IndexWeek.Standing;
import dev.filmward.report.IndexWeek.Why;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Takes a film's week, gives what to do about it, the most urgent first. One act of a kind, about
 * the worst layer.
 */
final class Acts {
  /** Fewer samples than that share of the expected ones are told (common practice, no source). */
  private static final double WHOLE = 0.9;

  /** A larger share of samples that look misread is told (common practice, no source). */
  private static final double MISREAD = 0.02;

  private Acts() {}

  static FilmWeek added(FilmWeek film, Asked asked) {
    List<Act> acts = new ArrayList<>();
    List<CharacteristicWeek> judged =
        film.characteristics().stream().filter(each -> !each.isShare()).toList();
    worst(judged, acts, Act.Kind.OUT_OF_SPEC, Acts::mostOutside, 0);
    below(judged, acts);
    worst(
        judged,
        acts,
        Act.Kind.NOT_STABLE,
        each -> each.index().why() == Why.UNSTABLE ? each.steadiness().signalled() : 0,
        0);
    whole(film, acts);
    if (judged.stream().anyMatch(each -> each.index().why() == Why.NO_LIMITS)) {
      acts.add(new Act(Act.Kind.NO_LIMITS, "", 0));
    }
    lanes(judged, acts, asked);
    judged.stream()
        .filter(
            each ->
                each.index().why() == Why.STABLE && each.index().standing() == Standing.NOT_SHOWN)
        .min(Comparator.comparingDouble(each -> each.index().atLeast().orElse(0)))
        .ifPresent(
            each -> acts.add(act(Act.Kind.NOT_SHOWN, each, each.index().atLeast().orElse(0))));
    worst(
        judged,
        acts,
        Act.Kind.GIVEAWAY,
        each ->
            each.giveaway()
                .flatMap(
                    found ->
                        found.achievableUm().isPresent()
                            ? Optional.of(found.achievableUm().getAsDouble())
                            : Optional.empty())
                .orElse(0.0),
        0);
    acts.sort(Comparator.comparing(Act::kind));
    return new FilmWeek(
        film.line(),
        film.structure(),
        film.name(),
        film.plies(),
        film.verdict(),
        film.before(),
        film.characteristics(),
        film.alarms(),
        film.gauge(),
        film.limits(),
        film.samples(),
        film.leftOut(),
        acts);
  }

  private interface Figure {
    double of(CharacteristicWeek each);
  }

  private static void worst(
      List<CharacteristicWeek> judged, List<Act> acts, Act.Kind kind, Figure figure, double above) {
    judged.stream()
        .filter(each -> figure.of(each) > above)
        .max(Comparator.comparingDouble(figure::of))
        .ifPresent(each -> acts.add(act(kind, each, figure.of(each))));
  }

  private static void below(List<CharacteristicWeek> judged, List<Act> acts) {
    judged.stream()
        .filter(each -> least(each).isPresent())
        .min(Comparator.comparingDouble(each -> least(each).orElse(0)))
        .ifPresent(each -> acts.add(act(Act.Kind.BELOW, each, least(each).orElse(0))));
  }

  /** Under any of the week's specifications, parts per million. */
  private static double mostOutside(CharacteristicWeek each) {
    return Stream.concat(
            Stream.of(each.observedPpm()), each.earlier().stream().map(EarlierSpec::observedPpm))
        .mapToDouble(ppm -> ppm.orElse(0))
        .max()
        .orElse(0);
  }

  /** The least index that is below what is asked for, under any of the week's specifications. */
  private static OptionalDouble least(CharacteristicWeek each) {
    return Stream.concat(Stream.of(each.index()), each.earlier().stream().map(EarlierSpec::index))
        .filter(index -> index.standing() == Standing.BELOW)
        .mapToDouble(index -> index.ppk().orElse(0))
        .min();
  }

  private static void whole(FilmWeek film, List<Act> acts) {
    if (film.alarms().unexplained() > 0) {
      acts.add(new Act(Act.Kind.UNEXPLAINED_ALARMS, "", film.alarms().unexplained()));
    }
    SamplesWeek samples = film.samples();
    double misread =
        samples.received() == 0 ? 0 : (double) film.gauge().flagged() / samples.received();
    if (misread > MISREAD) {
      acts.add(new Act(Act.Kind.MISREAD, "", misread));
    }
    if (samples.expected() > 0 && samples.received() < WHOLE * samples.expected()) {
      acts.add(
          new Act(Act.Kind.DATA_MISSING, "", 1 - (double) samples.received() / samples.expected()));
    }
  }

  /** Only where the film as a whole is good: a slit roll comes from one lane. */
  private static void lanes(List<CharacteristicWeek> judged, List<Act> acts, Asked asked) {
    judged.stream()
        .filter(each -> each.index().ppk().orElse(0) >= asked.index())
        .filter(
            each ->
                each.worstLane().isPresent()
                    && each.worstLane().get().ppk().orElse(Double.MAX_VALUE) < asked.index())
        .min(Comparator.comparingDouble(each -> each.worstLane().orElseThrow().ppk().orElse(0)))
        .ifPresent(
            each ->
                acts.add(
                    act(Act.Kind.WEAK_LANE, each, each.worstLane().orElseThrow().ppk().orElse(0))));
  }

  private static Act act(Act.Kind kind, CharacteristicWeek each, double figure) {
    return new Act(kind, each.kind() == Characteristic.Kind.TOTAL ? "" : each.name(), figure);
  }
}
