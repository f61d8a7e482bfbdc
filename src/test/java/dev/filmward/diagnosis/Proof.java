package dev.filmward.diagnosis;

import dev.filmward.diagnosis.ProofCases.Case;
import dev.filmward.diagnosis.ProofCases.Start;
import dev.filmward.diagnosis.ProofCases.Strength;
import dev.filmward.film.Sample;
import dev.filmward.simulate.MassBalanceLine;
import dev.filmward.simulate.MassBalanceLine.Film;
import dev.filmward.simulate.MassBalanceLine.Pace;
import dev.filmward.simulate.ProofFilms;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Runs simulated film through the diagnosis and counts how often it is right. */
final class Proof {
  static final double MEMORY = 0.4;
  static final int WEEK = 7 * 24 * 4;
  private static final int PER_ROLL = 12;

  private final DiagnosisEngine engine = new DiagnosisEngine(Signatures.builtIn());

  /** What a run came to: rank of the true cause from 1 (0 for not named), and its beginning. */
  record Run(int rank, int named, boolean startNear, String first, boolean ambiguous) {}

  /** What runs came to. */
  record Score(List<Run> runs) {
    double first() {
      return part(runs.stream().filter(run -> run.rank() == 1).count());
    }

    double shown() {
      return part(runs.stream().filter(run -> run.rank() >= 1 && run.rank() <= 3).count());
    }

    double startNear() {
      return part(runs.stream().filter(Run::startNear).count());
    }

    double ambiguous() {
      return part(runs.stream().filter(Run::ambiguous).count());
    }

    int medianNamed() {
      return runs.stream().mapToInt(Run::named).sorted().toArray()[runs.size() / 2];
    }

    private double part(long count) {
      return (double) count / runs.size();
    }
  }

  /** Runs are spread over the case's films; {@code seed} is of the first. */
  Score score(Case is, Strength strength, int runs, long seed) {
    return new Score(
        IntStream.range(0, runs)
            .parallel()
            .mapToObj(run -> run(is, strength, run, seed + run))
            .toList());
  }

  private Run run(Case is, Strength strength, int run, long seed) {
    Film film = is.films().get(run % is.films().size());
    int from = is.setting().before() + run % PER_ROLL;
    Pace pace = new Pace(is.setting().interval(), MEMORY, PER_ROLL);
    List<Sample> samples =
        new MassBalanceLine(film, pace, seed)
            .samples(from + is.setting().since(), is.maker().on(film, from, is.strength(strength)));
    List<Boundary> boundaries = new ArrayList<>();
    for (Boundary.Kind kind : is.setting().boundaries()) {
      boundaries.add(
          Boundary.of(kind, MassBalanceLine.at(pace, from + is.setting().boundaryAfter())));
    }
    FilmHistory history =
        FilmHistory.of(film.structure(), samples, samples.get(samples.size() - 1).takenAt())
            .withBoundaries(boundaries);
    return judged(is, engine.diagnose(history), MassBalanceLine.at(pace, from));
  }

  private static Run judged(Case is, Diagnosis diagnosis, Instant began) {
    List<Candidate> candidates = diagnosis.candidates();
    int rank = 0;
    boolean near = false;
    for (int i = 0; i < candidates.size(); i++) {
      if (candidates.get(i).signature().code().equals(is.code())) {
        rank = i + 1;
        Optional<Since> since = candidates.get(i).since();
        near =
            is.setting().start() == Start.ASKED
                && since.isPresent()
                && Duration.between(began, since.get().at())
                        .abs()
                        .compareTo(is.setting().interval().multipliedBy(2))
                    <= 0;
      }
    }
    String first = candidates.isEmpty() ? "-" : candidates.get(0).signature().code();
    boolean ambiguous =
        diagnosis.ambiguous().stream().anyMatch(group -> group.codes().contains(is.code()));
    return new Run(rank, candidates.size(), near, first, ambiguous);
  }

  /** What is named first in each of some weeks in which nothing happens; empty for nothing. */
  List<Optional<String>> quietWeeks(int weeks, long seed) {
    return IntStream.range(0, weeks).parallel().mapToObj(week -> quiet(week, seed + week)).toList();
  }

  private Optional<String> quiet(int week, long seed) {
    List<Film> films = List.of(ProofFilms.shrink(), ProofFilms.pouch(), ProofFilms.lidding());
    Film film = films.get(week % films.size());
    Pace pace = new Pace(Duration.ofMinutes(15), MEMORY, PER_ROLL);
    List<Sample> samples = new MassBalanceLine(film, pace, seed).samples(WEEK, (t, c, r) -> {});
    Instant end = samples.get(samples.size() - 1).takenAt();
    return engine.diagnose(FilmHistory.of(film.structure(), samples, end)).candidates().stream()
        .map(candidate -> candidate.signature().code())
        .findFirst();
  }
}
