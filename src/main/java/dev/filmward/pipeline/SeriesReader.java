package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.pipeline.SeriesView.Averages;
import dev.filmward.pipeline.SeriesView.HeldOut;
import dev.filmward.pipeline.SeriesView.Readings;
import dev.filmward.pipeline.SeriesView.Rescaled;
import dev.filmward.pipeline.SeriesView.SignalAt;
import dev.filmward.rule.ChosenTests;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgrouping;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;

/** Reads what a chart of one series shows. Thread-safe. */
public final class SeriesReader {
  private static final int MOST_HELD_OUT = 500;

  private final Plant plant;

  public SeriesReader(Plant plant) {
    this.plant = plant;
  }

  /** Which series. */
  public record Address(String line, String structure, Characteristic.Kind kind, int position) {
    /**
     * What it is about.
     *
     * @throws NoSuchElementException if there is no such structure or layer
     */
    Subject in(Plant plant) {
      Structure found =
          plant
              .structures()
              .find(structure)
              .orElseThrow(() -> new NoSuchElementException("no structure \"" + structure + "\""));
      Characteristic characteristic = characteristic(found, this);
      return new Subject(found, characteristic, plant.times(found).specs(characteristic));
    }
  }

  /** A characteristic of a structure, and what was asked of it. */
  record Subject(Structure structure, Characteristic characteristic, SpecTimes asked) {}

  /**
   * Reads the rows of a span of time with all that belongs to them.
   *
   * @throws NoSuchElementException if there is no such structure or layer
   */
  public SeriesView read(Address address, Span span) {
    return read(address, span, Integer.MAX_VALUE);
  }

  /**
   * As above, with so many of the rows as a chart can show; rows with a signal are always among
   * them, and the summary is of all.
   *
   * @param pixels how wide the chart is
   */
  public SeriesView read(Address address, Span span, int pixels) {
    return read(address, new View(span, pixels, Readings.CORRECTED, false));
  }

  /**
   * What a chart shows.
   *
   * @param pixels how wide it is
   * @param withAverage whether the moving average is wanted, also where nobody chose its test
   */
  public record View(Span span, int pixels, Readings readings, boolean withAverage) {}

  /** As above, of the readings as they were corrected or as they were exported. */
  public SeriesView read(Address address, View view) {
    Question question = new Question(address.in(plant), view);
    return plant.store().read(tables -> read(tables, address.line(), question));
  }

  private static Characteristic characteristic(Structure structure, Address address) {
    if (address.kind() == Characteristic.Kind.TOTAL) {
      return Characteristic.total();
    }
    List<ReportedLayer> layers = structure.reported();
    if (address.kind() != Characteristic.Kind.LAYER
        || !(address.position() >= 1 && address.position() <= layers.size())) {
      throw new NoSuchElementException(
          "no " + address.kind().word() + " " + address.position() + " in " + structure.code());
    }
    return Characteristic.layer(layers.get(address.position() - 1));
  }

  private record Question(Subject subject, View view) {
    private Structure structure() {
      return subject.structure();
    }

    private Characteristic characteristic() {
      return subject.characteristic();
    }

    private Span span() {
      return view.span;
    }
  }

  private static SeriesView read(Tables tables, String line, Question question) {
    Structure structure = question.structure();
    Series series = new Series(line, structure.code(), question.characteristic().position());
    FigureColumns columns = tables.figures().columns(series, question.span());
    List<LimitsVersion> frozen = tables.limits().of(series);
    List<LimitsVersion> limits =
        frozen.isEmpty()
            ? LimitsDesk.trial(tables, series).map(List::of).orElse(List.of())
            : frozen;
    List<SignalTable.Stored> signals =
        frozen.isEmpty()
            ? trialSignals(tables, series, question.span(), new Shown(columns, limits))
            : tables.signals().within(series, question.span());
    BitSet chosen = PointChoice.of(columns, question.view.pixels);
    List<SignalAt> signalsAt = keep(signals, columns, chosen);
    Optional<Averages> averages =
        averages(tables, question, series, new Shown(columns, limits), chosen);
    FilmScalings film = tables.scalings().of(line, structure.code());
    SeriesView corrected =
        new SeriesView(
            line,
            structure,
            question.characteristic(),
            question.subject.asked(),
            chosen.stream().mapToObj(columns::row).toList(),
            signalsAt,
            limits,
            frozen.isEmpty(),
            heldOut(tables, line, question),
            AskedFigures.of(columns, question.subject.asked()).summary(columns.count()),
            new Rescaled(
                Readings.CORRECTED, film, ScaledLimits.of(tables, series, film).otherwise(limits)),
            averages);
    return question.view.readings == Readings.CORRECTED
        ? corrected
        : exported(tables, corrected, question.span());
  }

  /** The same samples as they were exported; limits and signals are of the corrected ones. */
  private static SeriesView exported(Tables tables, SeriesView corrected, Span span) {
    Characteristic characteristic = corrected.characteristic();
    Production production = new Production(corrected.line(), corrected.structure());
    ExportedSeries exported =
        ExportedSeries.read(tables, production, characteristic, span, corrected.specs());
    return new SeriesView(
        corrected.line(),
        corrected.structure(),
        characteristic,
        corrected.specs(),
        corrected.rows().stream().map(exported::of).toList(),
        List.of(),
        List.of(),
        false,
        corrected.heldOut(),
        exported.figures().summary(corrected.summary().samples()),
        new Rescaled(Readings.EXPORTED, corrected.rescaled().film(), Set.of()),
        Optional.empty());
  }

  /** Of very many only the newest, which a person may still look at. */
  private static List<HeldOut> heldOut(Tables tables, String line, Question question) {
    Structure structure = question.structure();
    Subgrouping subgrouping = Subgrouping.layersAndTotal(structure);
    List<ScreenedSample> held =
        tables.screening().flagged(line, structure.code(), question.span()).stream()
            .filter(ScreenedSample::isOutOfCharts)
            .toList();
    return held.subList(Math.max(0, held.size() - MOST_HELD_OUT), held.size()).stream()
        .map(
            each ->
                new HeldOut(
                    each,
                    each.stored().isThinned()
                        ? Optional.empty()
                        : subgrouping.of(each.stored().sample(), question.characteristic())))
        .toList();
  }

  private record Shown(FigureColumns columns, List<LimitsVersion> limits) {}

  private static List<SignalTable.Stored> trialSignals(
      Tables tables, Series series, Span span, Shown shown) {
    if (shown.limits().isEmpty()) {
      return List.of();
    }
    ChosenTests tests = tables.tests().of(series.line(), series.structure());
    int position = series.position();
    return new TrialSignals(shown.limits().get(0), tests, position)
        .of(tables.figures().before(series, span.from(), tests.warmUp(position)), shown.columns());
  }

  /** Empty where nobody wants it or no limits hold. */
  private static Optional<Averages> averages(
      Tables tables, Question question, Series series, Shown shown, BitSet chosen) {
    if (shown.limits().isEmpty()) {
      return Optional.empty();
    }
    boolean isChosen =
        !tables
            .tests()
            .of(series.line(), series.structure())
            .newest(series.position())
            .shown()
            .onAverage()
            .isEmpty();
    if (!isChosen && !question.view.withAverage) {
      return Optional.empty();
    }
    List<FigureRow> before =
        tables.figures().before(series, question.span().from(), AverageLine.WARM_UP);
    double[] line = new AverageLine(shown.limits()).of(before, shown.columns());
    return Optional.of(new Averages(isChosen, chosen.stream().mapToObj(at -> line[at]).toList()));
  }

  /** Adds the rows with a signal to those chosen, and says at which of these they are. */
  private static List<SignalAt> keep(
      List<SignalTable.Stored> signals, FigureColumns columns, BitSet chosen) {
    Map<Long, Integer> index = new HashMap<>();
    signals.forEach(signal -> index.put(signal.sampleId(), -1));
    for (int i = 0; i < columns.count() && !index.isEmpty(); i++) {
      if (index.replace(columns.sampleId(i), i) != null) {
        chosen.set(i);
      }
    }
    int[] shownAt = new int[columns.count()];
    int shown = 0;
    for (int i = chosen.nextSetBit(0); i >= 0; i = chosen.nextSetBit(i + 1)) {
      shownAt[i] = shown++;
    }
    List<SignalAt> kept = new ArrayList<>();
    for (SignalTable.Stored signal : signals) {
      int at = index.getOrDefault(signal.sampleId(), -1);
      if (at >= 0) {
        kept.add(new SignalAt(shownAt[at], signal.signal()));
      }
    }
    return kept;
  }
}
