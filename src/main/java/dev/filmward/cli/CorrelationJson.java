package dev.filmward.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import dev.filmward.composition.Correlation;
import dev.filmward.composition.LayerPair;
import dev.filmward.pipeline.FilmCorrelations;
import java.io.IOException;
import java.util.Optional;

/** How the layers of a film move together, as JSON. */
final class CorrelationJson {
  private CorrelationJson() {}

  static void write(JsonGenerator json, FilmCorrelations film) throws IOException {
    json.writeStartObject();
    json.writeStringField("line", film.line());
    json.writeStringField("structure", film.structure());
    json.writeNumberField("samples", film.samples());
    json.writeArrayFieldStart("pairs");
    for (LayerPair pair : film.pairs()) {
      json.writeStartObject();
      json.writeStringField("first", film.name(pair.first()));
      json.writeStringField("second", film.name(pair.second()));
      write(json, "thickness", pair.thickness());
      write(json, "share", pair.share());
      write(json, "logRatio", pair.logRatio());
      json.writeBooleanField("trade", pair.isTrade());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("words");
    for (String sentence : CorrelationWords.sentences(film)) {
      json.writeString(sentence);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, String name, Optional<Correlation> found)
      throws IOException {
    if (found.isPresent()) {
      json.writeObjectFieldStart(name);
      json.writeNumberField("r", found.get().r());
      json.writeNumberField("lower", found.get().lower());
      json.writeNumberField("upper", found.get().upper());
      json.writeEndObject();
    }
  }
}
