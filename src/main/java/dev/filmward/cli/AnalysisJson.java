package dev.filmward.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import dev.filmward.capability.Capability;
import dev.filmward.capability.Giveaway;
import dev.filmward.chart.Band;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.intake.FileCount;
import dev.filmward.pipeline.Analysis;
import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.Analysis.Thinned;
import dev.filmward.pipeline.FilmCorrelations;
import dev.filmward.pipeline.LinePrice;
import dev.filmward.pipeline.SeriesDetail;
import dev.filmward.rule.price.Price;
import dev.filmward.rule.price.PriceChange;
import java.io.IOException;
import java.io.OutputStream;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** An analysis as JSON, in the format that does not break; the same input gives the same bytes. */
final class AnalysisJson {
  private final ZoneId zone;
  private final OffsetTimes times;
  private final OutputOptions output;

  AnalysisJson(ZoneId zone, OutputOptions output) {
    this.zone = zone;
    this.times = new OffsetTimes(zone);
    this.output = output;
  }

  void write(Analysis analysis, OutputStream out) throws IOException {
    JsonFactory factory = JsonFactory.builder().build();
    try (JsonGenerator json =
        factory.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      json.writeArrayFieldStart("files");
      for (FileCount file : analysis.files()) {
        write(json, file);
      }
      json.writeEndArray();
      if (!analysis.thinned().isEmpty()) {
        json.writeArrayFieldStart("thinned");
        for (Thinned thinned : analysis.thinned()) {
          write(json, thinned);
        }
        json.writeEndArray();
      }
      json.writeArrayFieldStart("series");
      for (Series series : analysis.series()) {
        write(json, series);
      }
      json.writeEndArray();
      if (!analysis.prices().isEmpty()) {
        json.writeArrayFieldStart("prices");
        for (LinePrice price : analysis.prices()) {
          write(json, price);
        }
        json.writeEndArray();
      }
      if (!analysis.correlations().isEmpty()) {
        json.writeArrayFieldStart("correlations");
        for (FilmCorrelations film : analysis.correlations()) {
          CorrelationJson.write(json, film);
        }
        json.writeEndArray();
      }
      json.writeEndObject();
      json.writeRaw('\n');
    }
  }

  private void write(JsonGenerator json, Thinned thinned) throws IOException {
    json.writeStartObject();
    json.writeStringField("line", thinned.line());
    json.writeStringField("structure", thinned.structure());
    json.writeNumberField("samples", thinned.samples());
    json.writeStringField("from", times.of(thinned.from()));
    json.writeStringField("to", times.of(thinned.to()));
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, LinePrice line) throws IOException {
    json.writeStartObject();
    json.writeStringField("line", line.line());
    json.writeStringField("structure", line.structure());
    json.writeNumberField("characteristics", line.characteristics());
    json.writeNumberField("intervalSeconds", line.interval().toMillis() / 1000.0);
    json.writeNumberField("shiftSeconds", LinePrice.SHIFT.toSeconds());
    write(json, line.price());
    json.writeArrayFieldStart("changes");
    for (PriceChange change : line.changes()) {
      json.writeStartObject();
      json.writeStringField("chart", change.chart().word());
      json.writeStringField("test", change.test().word());
      json.writeStringField("turn", change.turn().name().toLowerCase(Locale.ROOT));
      write(json, change.price());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, Price price) throws IOException {
    json.writeNumberField("falseAlarmsPerShift", price.falseAlarmsPerShift());
    json.writeNumberField("samplesToFalseAlarm", price.samplesToFalseAlarm());
    json.writeNumberField("samplesToSeeOneSigma", price.samplesToSeeOneSigma());
  }

  private static void write(JsonGenerator json, FileCount file) throws IOException {
    json.writeStartObject();
    json.writeStringField("name", file.name());
    json.writeNumberField("rows", file.rows());
    json.writeNumberField("readings", file.readings());
    json.writeNumberField("missing", file.missing());
    json.writeNumberField("quarantined", file.quarantined());
    writeWords(json, "notes", file.notes());
    json.writeEndObject();
  }

  private void write(JsonGenerator json, Series series) throws IOException {
    json.writeStartObject();
    json.writeStringField("line", series.key().line());
    json.writeStringField("structure", series.key().structure());
    write(json, series.key().characteristic());
    json.writeNumberField("subgroups", series.sizes().subgroups());
    json.writeObjectFieldStart("size");
    json.writeNumberField("min", series.sizes().least());
    json.writeNumberField("max", series.sizes().greatest());
    json.writeNumberField("usual", series.sizes().usual());
    json.writeEndObject();
    json.writeNumberField("readings", series.sizes().readings());
    json.writeNumberField("mean", series.mean());
    write(json, "sigmaWithin", series.sigmaWithin());
    write(json, "sigmaOverall", series.sigmaOverall());
    write(json, "rangeBar", series.rangeBar());
    json.writeNumberField("baseline", series.baseline());
    write(json, "xbar", series.xbar());
    write(json, "range", series.range());
    write(json, series.spec());
    write(json, series.capability());
    json.writeArrayFieldStart("signals");
    for (PointSignal signal : series.signals()) {
      write(json, signal);
    }
    json.writeEndArray();
    if (!series.charts().isEmpty()) {
      json.writeArrayFieldStart("charts");
      for (Charted chart : series.charts()) {
        write(json, chart);
      }
      json.writeEndArray();
    }
    if (series.detail().isPresent()) {
      SeriesDetail detail = series.detail().get();
      writeWords(json, "detail", new DetailWords(zone, output).of(detail));
      write(json, detail);
    }
    json.writeEndObject();
  }

  private void write(JsonGenerator json, SeriesDetail detail) throws IOException {
    if (detail.giveaway().isPresent()) {
      Giveaway giveaway = detail.giveaway().get();
      json.writeObjectFieldStart("giveaway");
      write(json, "nominalUm", giveaway.nominalUm());
      write(json, "achievableUm", giveaway.achievableUm());
      write(json, "gPerM2", output.gPerM2(detail));
      write(json, "kgPerHour", output.kgPerHour(detail));
      write(json, "moneyPerWeek", output.moneyPerWeek(detail));
      json.writeEndObject();
    }
  }

  private static void writeWords(JsonGenerator json, String name, List<String> words)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (String word : words) {
      json.writeString(word);
    }
    json.writeEndArray();
  }

  private static void write(JsonGenerator json, Charted chart) throws IOException {
    json.writeStartObject();
    json.writeStringField("chart", chart.chart());
    for (Map.Entry<String, Band> band : chart.bands().entrySet()) {
      write(json, band.getKey(), Optional.of(band.getValue()));
    }
    json.writeArrayFieldStart("signals");
    for (ChartSignal signal : chart.signals()) {
      json.writeStartObject();
      json.writeStringField("part", signal.part());
      json.writeNumberField("index", signal.index());
      json.writeStringField("side", signal.side().word());
      if (!signal.behind().isEmpty()) {
        writeWords(json, "behind", signal.behind());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, Characteristic what) throws IOException {
    json.writeObjectFieldStart("characteristic");
    json.writeStringField("kind", what.kind().word());
    json.writeNumberField("position", what.position());
    json.writeStringField("name", what.name());
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, String name, OptionalDouble value)
      throws IOException {
    if (value.isPresent()) {
      json.writeNumberField(name, value.getAsDouble());
    }
  }

  private static void write(JsonGenerator json, String name, Optional<Band> band)
      throws IOException {
    if (band.isPresent()) {
      json.writeObjectFieldStart(name);
      json.writeNumberField("lower", band.get().lower());
      json.writeNumberField("centre", band.get().centre());
      json.writeNumberField("upper", band.get().upper());
      json.writeEndObject();
    }
  }

  private static void write(JsonGenerator json, SpecLimits spec) throws IOException {
    json.writeObjectFieldStart("spec");
    write(json, "lower", spec.lower());
    write(json, "target", spec.target());
    write(json, "upper", spec.upper());
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, Capability capability) throws IOException {
    if (!capability.isEmpty()) {
      json.writeObjectFieldStart("capability");
      write(json, "cp", capability.cp());
      write(json, "cpk", capability.cpk());
      write(json, "pp", capability.pp());
      write(json, "ppk", capability.ppk());
      json.writeEndObject();
    }
  }

  private void write(JsonGenerator json, PointSignal signal) throws IOException {
    json.writeStartObject();
    json.writeStringField("chart", signal.signal().chart().word());
    json.writeStringField("test", signal.signal().test().word());
    json.writeNumberField("index", signal.index());
    json.writeStringField("sample", signal.sample());
    json.writeStringField("takenAt", times.of(signal.takenAt()));
    json.writeStringField("side", signal.signal().side().word());
    json.writeEndObject();
  }
}
