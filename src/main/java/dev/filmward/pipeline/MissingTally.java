package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Counts readings that were not measured, by day and lane. One owner; not thread safe. */
final class MissingTally {
  private final ZoneId zone;
  private final Map<Place, long[]> counts =
      new TreeMap<>(Comparator.comparing(Place::day).thenComparingInt(Place::lane));

  MissingTally(ZoneId zone) {
    this.zone = zone;
  }

  private record Place(LocalDate day, int lane) {}

  /** Counts what a line made of a structure, and gives how many places that were. */
  long read(Tables tables, String line, String structure, Instant since) {
    tables.samples().within(line, structure, Span.since(since), stored -> add(stored.sample()));
    return counts.size();
  }

  private void add(Sample sample) {
    LocalDate day = sample.takenAt().atZone(zone).toLocalDate();
    for (int lane = 0; lane < sample.laneCount() && sample.layers() > 0; lane++) {
      long[] count = counts.computeIfAbsent(new Place(day, sample.lane(lane)), any -> new long[2]);
      for (int position = 1; position <= sample.layers(); position++) {
        count[0]++;
        count[1] += sample.isMeasured(position, lane) ? 0 : 1;
      }
    }
  }

  /** By day, then lane. */
  List<MissingShare> shares() {
    return counts.entrySet().stream()
        .map(
            entry ->
                new MissingShare(
                    entry.getKey().day(),
                    entry.getKey().lane(),
                    entry.getValue()[0],
                    entry.getValue()[1]))
        .toList();
  }
}
