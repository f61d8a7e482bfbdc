package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.rule.TestSet;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What an analysis looks at.
 *
 * @param charted which characteristics
 * @param period samples taken at other times are passed over
 * @param tests of the points of the mean and range chart
 * @param charts those to draw besides means and ranges
 * @param baseline where the limits come from; from all subgroups unless given
 */
public record AnalysisScope(
    Function<Structure, Subgrouping> charted,
    Predicate<Instant> period,
    Optional<BaselineChoice> baseline,
    Set<OtherChart> charts,
    TestSet tests,
    Closeness closeness) {

  /** How closely an analysis looks. */
  public enum Closeness {
    /** Limits, tests and indices. */
    FIGURES,
    /** Also what {@link SeriesDetail} holds; readings are kept, 8 bytes each. */
    DETAIL
  }

  public AnalysisScope {
    charts = Collections.unmodifiableSet(new TreeSet<>(charts));
  }

  /** Layers and total, of all times, under limits from all of them. */
  public static AnalysisScope everything() {
    return new AnalysisScope(
        Subgrouping::layersAndTotal,
        takenAt -> true,
        Optional.empty(),
        Set.of(),
        TestSet.STANDARD,
        Closeness.FIGURES);
  }
}
