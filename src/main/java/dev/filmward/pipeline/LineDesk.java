package dev.filmward.pipeline;

import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.alarm.LineModes;
import dev.filmward.film.Structures;
import dev.filmward.store.SampleTable;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.function.Consumer;

/**
 * People, or the line's own control, say what a line is doing. Alarms are worked out again from the
 * moment that was named. Thread-safe; each change is one transaction.
 */
public final class LineDesk {
  private final Plant plant;
  private final Judging judging;
  private final AlarmNews.Source news;
  private final Consumer<PlantEvent> listener;

  LineDesk(Plant plant, Judging judging, AlarmNews.Source news, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.news = news;
    this.judging = judging;
    this.listener = listener;
  }

  /**
   * Notes what a line is doing from a moment on.
   *
   * @throws NoSuchElementException if nothing has come from that line yet
   * @throws IllegalArgumentException if the moment is yet to come
   */
  public void say(LineModeChange change) {
    if (change.since().isAfter(change.decision().at())) {
      throw new IllegalArgumentException("say what the line is doing, not what it will be doing");
    }
    List<Runnable> afterwards = plant.store().write(tables -> say(tables, change));
    afterwards.forEach(Runnable::run);
    listener.accept(new PlantEvent.LineModeSaid(change.line(), change.mode().word()));
  }

  /** All that was said of a line. */
  public LineModes said(String line) {
    return plant
        .store()
        .read(
            tables -> {
              requireLine(tables, line);
              return tables.lineModes().of(line);
            });
  }

  /** What a line is doing now. */
  public LineMode now(String line) {
    return plant.store().read(tables -> new Holding(tables, plant.clock().instant()).mode(line));
  }

  private List<Runnable> say(Tables tables, LineModeChange change) {
    requireLine(tables, change.line());
    LineMode before = new Holding(tables, change.decision().at()).mode(change.line());
    tables.lineModes().add(change);
    tables.audit().add(Audited.mode(change, before));
    List<Runnable> afterwards = new ArrayList<>();
    Structures structures = plant.structures();
    for (SampleTable.Production made : tables.samples().productions()) {
      if (made.line().equals(change.line()) && !made.lastAt().isBefore(change.since())) {
        structures
            .find(made.structure())
            .map(film -> judging.begin(tables).judgeAgain(made.line(), film, change.since()))
            .ifPresent(afterwards::add);
      }
    }
    List<PlantEvent> moved =
        AlarmMoves.refresh(news.begin(tables), change.line(), change.decision());
    afterwards.add(() -> moved.forEach(listener));
    return afterwards;
  }

  static void requireLine(Tables tables, String line) {
    if (tables.samples().productions().stream().noneMatch(made -> made.line().equals(line))) {
      throw new NoSuchElementException("nothing has come from a line \"" + line + "\" yet");
    }
  }
}
