package dev.filmward.simulate;

import dev.filmward.film.Sample;
import java.util.List;

/**
 * Finds the seed of a sample run: the first whole number from 1 on with which the run raises the
 * alarms that it must and none by chance. Run {@code main} with a folder's name after a run's story
 * was changed, and write the number into the story.
 */
final class SeedSearch {
  private static final long MOST = 2_000_000;

  private SeedSearch() {}

  public static void main(String[] folders) {
    for (SampleRun run : SampleRuns.all()) {
      if (folders.length == 0 || List.of(folders).contains(run.folder())) {
        System.out.println(run.folder() + ": " + firstSeed(run));
      }
    }
  }

  static long firstSeed(SampleRun run) {
    for (long seed = 1; seed <= MOST; seed++) {
      SampleRun candidate = run.withSeed(seed);
      List<Sample> samples = candidate.samples();
      if (Verdict.complaints(candidate, samples).isEmpty()
          && Verdict.complaints(candidate, ReadBack.of(candidate).samples()).isEmpty()) {
        return seed;
      }
    }
    throw new IllegalStateException("no seed up to " + MOST + " suits " + run.folder());
  }
}
