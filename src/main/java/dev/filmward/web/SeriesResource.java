package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.Band;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.drift.TwoSpans;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structures;
import dev.filmward.pipeline.CheckDesk;
import dev.filmward.pipeline.LayerLookReader;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.SeriesReader;
import dev.filmward.pipeline.SeriesReader.Address;
import dev.filmward.pipeline.SeriesReader.View;
import dev.filmward.pipeline.SeriesView;
import dev.filmward.pipeline.SeriesView.Averages;
import dev.filmward.pipeline.SeriesView.Readings;
import dev.filmward.pipeline.SpanComparer;
import dev.filmward.pipeline.SpanComparison;
import dev.filmward.pipeline.SpecTimes;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.ScreenedSample;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.web.Answers.Fresh;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** One series as columns for a chart. */
final class SeriesResource {
  private final Plant plant;
  private final SeriesReader reader;
  private final LayerLookReader looks;
  private final SpanComparer comparer;
  private final Answers answers;

  SeriesResource(Plant plant, Answers answers) {
    this.plant = plant;
    this.answers = answers;
    this.reader = new SeriesReader(plant);
    this.looks = new LayerLookReader(plant);
    this.comparer = new SpanComparer(plant);
  }

  void get(Context ctx) {
    Address address = address(ctx);
    View view = new View(span(ctx), pixels(ctx), readings(ctx), withAverage(ctx));
    answers.give(ctx, () -> read(address, view));
  }

  /** Lanes, distribution and movement of the same span. */
  void look(Context ctx) {
    Address address = address(ctx);
    Span span = span(ctx);
    int pixels = pixels(ctx);
    answers.give(
        ctx,
        () ->
            fresh(
                address.line(), () -> LayerLookJson.of(looks.read(address, span, pixels / 2 + 1))));
  }

  /** The same characteristic in another time, or on another line, beside it. */
  void compare(Context ctx) {
    Address address = address(ctx);
    SpanComparer.Side first = new SpanComparer.Side(address.line(), span(ctx));
    Span other =
        new Span(
            time(ctx, "otherFrom", Span.always().from()), time(ctx, "otherTo", Span.always().to()));
    SpanComparer.Side second =
        new SpanComparer.Side(Requests.textOr(ctx, "otherLine", address.line()), other);
    SpanComparison comparison = comparer.compare(address, first, second);
    ObjectNode node = Wire.object().put("unit", "um");
    addSummary(node.putObject("first"), comparison.first());
    addSummary(node.putObject("second"), comparison.second());
    node.set("difference", comparison.difference().map(SeriesResource::difference).orElse(null));
    ctx.json(node);
  }

  private static ObjectNode difference(TwoSpans difference) {
    ObjectNode node = Wire.object();
    node.set("level", LayerLookJson.estimate(difference.level()));
    node.put("p", difference.p()).put("levelsDiffer", difference.levelsDiffer());
    node.set("spread", difference.spread().map(LayerLookJson::estimate).orElse(null));
    return node;
  }

  private static Instant time(Context ctx, String name, Instant otherwise) {
    return Requests.number(ctx, name).map(Instant::ofEpochMilli).orElse(otherwise);
  }

  private static Address address(Context ctx) {
    return new Address(
        Requests.text(ctx, "line"), Requests.text(ctx, "structure"), kind(ctx), position(ctx));
  }

  private static Span span(Context ctx) {
    Span always = Span.always();
    return new Span(time(ctx, "from", always.from()), time(ctx, "to", always.to()));
  }

  private Fresh read(Address address, View view) {
    return fresh(address.line(), () -> json(reader.read(address, view)));
  }

  /** Good until a sample or a decision changes the line, or somebody its structures. */
  private Fresh fresh(String line, Supplier<ObjectNode> reading) {
    long before = plant.changes().of(line);
    Structures structures = plant.structures();
    ObjectNode answer = reading.get();
    return new Fresh(
        answer, () -> plant.changes().of(line) == before && plant.structures().equals(structures));
  }

  private static Characteristic.Kind kind(Context ctx) {
    String word = Requests.text(ctx, "kind");
    try {
      return Characteristic.Kind.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException("kind is layer or total, not \"" + word + "\"", e);
    }
  }

  private static Readings readings(Context ctx) {
    String word = Requests.textOr(ctx, "readings", "corrected");
    try {
      return Readings.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          "readings are corrected or exported, not \"" + word + "\"", e);
    }
  }

  private static boolean withAverage(Context ctx) {
    String word = Requests.textOr(ctx, "average", "chosen");
    if (!word.equals("chosen") && !word.equals("shown")) {
      throw new IllegalArgumentException("average is chosen or shown, not \"" + word + "\"");
    }
    return word.equals("shown");
  }

  private static int pixels(Context ctx) {
    long pixels = Requests.number(ctx, "pixels").orElse((long) Integer.MAX_VALUE);
    if (pixels < 1) {
      throw new IllegalArgumentException("pixels is the width of a chart, not " + pixels);
    }
    return (int) Math.min(pixels, Integer.MAX_VALUE);
  }

  private static int position(Context ctx) {
    try {
      return Requests.number(ctx, "position").map(Math::toIntExact).orElse(0);
    } catch (ArithmeticException e) {
      throw new IllegalArgumentException("position counts the layers from 1", e);
    }
  }

  private ObjectNode json(SeriesView view) {
    ObjectNode node = Wire.object().put("line", view.line()).put("unit", "um");
    node.putObject("structure")
        .put("code", view.structure().code())
        .put("name", view.structure().name());
    node.set("characteristic", Wire.characteristic(view.characteristic()));
    ArrayNode roles = node.putArray("roles");
    if (view.characteristic().kind() == Characteristic.Kind.LAYER) {
      view.structure().reported().get(view.characteristic().position() - 1).members().stream()
          .map(layer -> layer.role().name().toLowerCase(Locale.ROOT))
          .forEach(roles::add);
    }
    node.set("spec", Wire.spec(view.spec()));
    node.set("average", Wire.spec(view.average()));
    ArrayNode specs = node.putArray("specs");
    view.specs().all().forEach(spec -> specs.add(spec(spec)));
    node.set("columns", columns(view));
    ArrayNode signals = node.putArray("signals");
    view.signals().forEach(at -> signals.add(Wire.signal(at.signal()).put("index", at.index())));
    ArrayNode heldOut = node.putArray("heldOut");
    view.heldOut().forEach(held -> heldOut.add(heldOut(held)));
    ArrayNode limits = node.putArray("limits");
    new LimitsJson(plant.zone())
        .versions(view.limits(), view.rescaled().otherwise())
        .forEach(limits::add);
    node.put("averageIsChosen", view.averages().filter(Averages::isChosen).isPresent());
    node.put("shown", view.rescaled().readings().name().toLowerCase(Locale.ROOT));
    node.set("scalings", scalings(view));
    node.set("doubtful", doubtful(view));
    addSummary(node, view);
    return node;
  }

  private static ObjectNode spec(SpecTimes.Spec spec) {
    ObjectNode node = Wire.object();
    node.put("from", spec.from().map(Instant::toEpochMilli).orElse(null));
    node.set("spec", Wire.spec(spec.individual()));
    node.set("average", Wire.spec(spec.average()));
    return node;
  }

  private static ObjectNode heldOut(SeriesView.HeldOut held) {
    ScreenedSample screened = held.sample();
    Sample sample = screened.stored().sample();
    ObjectNode node =
        Wire.object()
            .put("id", screened.stored().id())
            .put("takenAt", sample.takenAt().toEpochMilli())
            .put("roll", sample.key().roll())
            .put("sample", sample.key().sample())
            .put("state", screened.state().orElseThrow().word())
            .put("mean", held.exported().map(Subgroup::mean).orElse(null));
    ArrayNode kinds = node.putArray("kinds");
    screened.flags().forEach(flag -> kinds.add(flag.kind().word()));
    ArrayNode evidence = node.putArray("evidence");
    screened.flags().forEach(flag -> evidence.add(flag.evidence()));
    return node;
  }

  /** Spans of samples that a failed check of the gauge made doubtful. */
  private ArrayNode doubtful(SeriesView view) {
    ArrayNode doubtful = Wire.mapper().createArrayNode();
    CheckJson json = new CheckJson(plant.zone());
    for (CheckDesk.Doubt doubt : plant.gaugeChecks().read().doubts()) {
      if (doubt.samples().containsKey(view.line())) {
        doubtful.add(json.doubt(doubt));
      }
    }
    return doubtful;
  }

  /** What moved the readings that are shown; of a total, that of every layer. */
  private ArrayNode scalings(SeriesView view) {
    ArrayNode scalings = Wire.mapper().createArrayNode();
    int position = view.characteristic().position();
    for (JsonNode each : new GaugeJson(plant.zone()).scalings(view.rescaled().film())) {
      if (position == 0 || each.path("position").asInt() == position) {
        scalings.add(each);
      }
    }
    return scalings;
  }

  private static void addSummary(ObjectNode node, SeriesView view) {
    addSummary(node, view.summary());
    node.put("stable", view.signals().isEmpty());
  }

  private static void addSummary(ObjectNode node, SeriesView.Summary summary) {
    node.put("samples", summary.samples()).put("readings", summary.readings());
    Wire.number(node, "mean", summary.mean());
    Wire.number(node, "sigmaWithin", summary.sigmaWithin());
    Wire.number(node, "sigmaOverall", summary.sigmaOverall());
    if (summary.capability().isEmpty()) {
      node.putNull("capability");
    } else {
      ObjectNode capability = node.putObject("capability");
      Wire.number(capability, "cp", summary.capability().cp());
      Wire.number(capability, "cpk", summary.capability().cpk());
      Wire.number(capability, "pp", summary.capability().pp());
      Wire.number(capability, "ppk", summary.capability().ppk());
      SpecTimes.Spec judgedBy = summary.judged().spec();
      capability.put("from", judgedBy.from().map(Instant::toEpochMilli).orElse(null));
      capability.set("spec", Wire.spec(judgedBy.individual()));
      capability.put("readings", summary.judged().readings());
    }
  }

  private static ObjectNode columns(SeriesView view) {
    Columns columns = view.averages().isPresent() ? new Columns().withAverage() : new Columns();
    for (int i = 0; i < view.rows().size(); i++) {
      FigureRow row = view.rows().get(i);
      columns.add("takenAt", row.takenAt().toEpochMilli());
      columns.add("roll", row.key().roll());
      columns.add("sample", row.key().sample());
      columns.add("file", row.fileId());
      addFigures(columns, row.subgroup());
      addLimits(columns, view.inForce(row), row.subgroup());
      if (view.averages().isPresent()) {
        addAverage(columns, view.averages().get().ofRows().get(i), mean(view, row));
      }
    }
    return columns.json();
  }

  /** The limits of a row's mean. */
  private static Optional<Band> mean(SeriesView view, FigureRow row) {
    return view.inForce(row)
        .flatMap(held -> row.subgroup().map(found -> held.limits().mean(found.size())));
  }

  private static void addAverage(Columns columns, double average, Optional<Band> mean) {
    Optional<Band> band = mean.filter(found -> !Double.isNaN(average));
    double limit = Averages.LIMIT;
    columns.add("average", band.map(found -> place(found, average)));
    columns.add("averageLower", band.map(found -> place(found, -limit)));
    columns.add("averageCentre", band.map(Band::centre));
    columns.add("averageUpper", band.map(found -> place(found, limit)));
  }

  /**
   * So many standard deviations of a mean off its centre line; its limits are three of them off.
   */
  private static double place(Band mean, double sigmas) {
    return mean.centre() + sigmas * (mean.upper() - mean.centre()) / 3;
  }

  private static void addFigures(Columns columns, Optional<Subgroup> subgroup) {
    columns.add("size", subgroup.map(Subgroup::size).orElse(0));
    columns.add("mean", subgroup.map(Subgroup::mean));
    columns.add("range", subgroup.filter(found -> found.size() > 1).map(Subgroup::range));
    columns.add("least", subgroup.map(Subgroup::least));
    columns.add("greatest", subgroup.map(Subgroup::greatest));
  }

  private static void addLimits(
      Columns columns, Optional<LimitsVersion> version, Optional<Subgroup> subgroup) {
    Optional<Band> mean =
        version.flatMap(held -> subgroup.map(found -> held.limits().mean(found.size())));
    Optional<Band> range =
        version.flatMap(
            held ->
                subgroup
                    .filter(found -> found.size() > 1)
                    .map(found -> held.limits().range(found.size())));
    columns.add("meanLower", mean.map(Band::lower));
    columns.add("meanCentre", mean.map(Band::centre));
    columns.add("meanUpper", mean.map(Band::upper));
    columns.add("rangeLower", range.map(Band::lower));
    columns.add("rangeCentre", range.map(Band::centre));
    columns.add("rangeUpper", range.map(Band::upper));
  }
}
