package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Structure;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.ScreeningTable.Decided;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Leaves the samples of a line in a span out of the charts because of one failed check, and puts
 * those back that were left out because of it. Alarms are worked out again. Samples whose readings
 * were thinned stay as they are. Within one transaction, for one thread.
 */
final class LeavingOut {
  private final Tables tables;
  private final Judging judging;
  private final Function<String, Optional<Structure>> structures;
  private final String because;

  /**
   * @param because begins the reason of each decision, so that it is found again
   */
  LeavingOut(
      Tables tables,
      Judging judging,
      Function<String, Optional<Structure>> structures,
      String because) {
    this.tables = tables;
    this.judging = judging;
    this.structures = structures;
    this.because = because;
  }

  /** Leaves out what is charted; the answers are to be run after the commit. */
  List<Runnable> leaveOut(String line, Span span, Decision decision) {
    return decide(line, span, decision, ScreeningState.LEFT_OUT);
  }

  /** Puts back what was left out for the same reason. */
  List<Runnable> putBack(String line, Span span, Decision decision) {
    return decide(line, span, decision, ScreeningState.PUT_BACK);
  }

  private List<Runnable> decide(String line, Span span, Decision decision, ScreeningState state) {
    Predicate<ScreenedSample> concerned =
        state == ScreeningState.LEFT_OUT
            ? sample -> !sample.isOutOfCharts()
            : this::wasLeftOutBecause;
    List<Runnable> afterwards = new ArrayList<>();
    for (SampleTable.Production made : tables.samples().productions()) {
      Optional<Structure> film = structures.apply(made.structure());
      if (made.line().equals(line) && film.isPresent()) {
        List<ScreenedSample> some =
            tables.screening().within(line, made.structure(), span).stream()
                .filter(concerned)
                .toList();
        if (!some.isEmpty()) {
          afterwards.add(decide(some, film.get(), decision, state));
        }
      }
    }
    return afterwards;
  }

  private boolean wasLeftOutBecause(ScreenedSample sample) {
    List<Decided> decisions = tables.screening().decisions(sample.stored().id());
    return sample.state().filter(ScreeningState.LEFT_OUT::equals).isPresent()
        && !decisions.isEmpty()
        && decisions.get(decisions.size() - 1).decision().reason().startsWith(because);
  }

  private Runnable decide(
      List<ScreenedSample> some, Structure film, Decision decision, ScreeningState state) {
    Decision told =
        new Decision(decision.author(), because + ": " + decision.reason(), decision.at());
    List<Stored> stored = new ArrayList<>();
    List<ScreenedSample> now = new ArrayList<>();
    for (ScreenedSample sample : some) {
      tables.screening().decide(sample.stored().id(), new Decided(state, told));
      stored.add(sample.stored());
      now.add(new ScreenedSample(sample.stored(), Optional.of(state), sample.flags()));
    }
    tables.screening().replace(now, decision.at());
    return judging.begin(tables).screenAgain(stored, film);
  }
}
