package dev.filmward.pipeline;

import dev.filmward.pipeline.Handover.Kept;
import dev.filmward.pipeline.Handover.Part;
import dev.filmward.pipeline.Handover.Section;
import dev.filmward.shift.Shift;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Puts together what a shift tells the next. A part that has no source here is not recorded yet,
 * and the handover says so. Thread-safe.
 */
public final class HandoverReader {
  private static final Map<Part, HandoverSource> SOURCES = sources();

  private final Plant plant;
  private final BoardReader board;

  public HandoverReader(Plant plant) {
    this.plant = plant;
    this.board = new BoardReader(plant);
  }

  /** To add what is recorded one day, name its source here. */
  private static Map<Part, HandoverSource> sources() {
    Map<Part, HandoverSource> sources = new EnumMap<>(Part.class);
    sources.put(Part.LINES, HandoverLines::lines);
    sources.put(Part.OPEN_ALARMS, HandoverAlarms::open);
    sources.put(Part.SET_ASIDE, HandoverAside::alarms);
    sources.put(Part.ROLLS, HandoverAside::rolls);
    sources.put(Part.NO_CAUSE, HandoverAlarms::withoutCause);
    sources.put(Part.CARRIED_OVER, HandoverFacts::carriedOver);
    sources.put(Part.NOTES, HandoverFacts::notes);
    sources.put(Part.NEARING, HandoverNearing::items);
    sources.put(Part.GAPS, HandoverLines::gaps);
    sources.put(Part.FILES, HandoverFacts::files);
    sources.put(Part.SETTINGS, HandoverFacts::settings);
    sources.put(Part.CALIBRATIONS, HandoverGauges::items);
    sources.put(Part.CLOSED, HandoverAlarms::closed);
    return sources;
  }

  /**
   * Reads.
   *
   * @param line empty for all lines
   */
  public Handover read(String line, Shift shift) {
    Board now = board.read();
    return plant
        .store()
        .read(
            tables -> {
              HandoverScope scope = new HandoverScope(plant, tables, now, line, shift);
              List<Section> sections = new ArrayList<>();
              for (Part part : Part.values()) {
                sections.add(section(part, scope));
              }
              return new Handover(line, shift, now.now(), sections);
            });
  }

  private static Section section(Part part, HandoverScope scope) {
    return Optional.ofNullable(SOURCES.get(part))
        .map(source -> new Section(part, Kept.KEPT, source.items(scope)))
        .orElseGet(() -> new Section(part, Kept.NOT_YET, List.of()));
  }
}
