package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.CorrectedReading;
import io.javalin.http.Context;
import java.util.List;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/** Readings that took the place of others: what, who, when and why. */
final class CorrectionResource {
  private static final int MOST = 1_000;

  private final Plant plant;

  CorrectionResource(Plant plant) {
    this.plant = plant;
  }

  void ofFile(Context ctx) {
    long id = Requests.id(ctx);
    answer(
        ctx,
        plant
            .store()
            .read(
                tables -> {
                  if (tables.files().find(id).isEmpty()) {
                    throw new NoSuchElementException("no file " + id);
                  }
                  return tables.corrections().ofFile(id, MOST + 1);
                }));
  }

  /** Of a sample, or of all that a line made of a structure. */
  void list(Context ctx) {
    String line = Requests.text(ctx, "line");
    String structure = Requests.text(ctx, "structure");
    @Nullable String roll = ctx.queryParam("roll");
    answer(
        ctx,
        plant
            .store()
            .read(
                tables ->
                    roll == null
                        ? tables.corrections().ofProduction(line, structure, MOST + 1)
                        : tables
                            .corrections()
                            .ofSample(
                                new SampleKey(line, structure, roll, Requests.text(ctx, "sample")),
                                MOST + 1)));
  }

  private void answer(Context ctx, List<CorrectedReading> found) {
    ObjectNode answer = Wire.object();
    ArrayNode corrections = answer.putArray("corrections");
    found.stream().limit(MOST).map(this::json).forEach(corrections::add);
    ctx.json(answer.put("more", found.size() > MOST));
  }

  private ObjectNode json(CorrectedReading corrected) {
    SampleKey key = corrected.sample();
    return Wire.object()
        .put("line", key.line())
        .put("structure", key.structure())
        .put("roll", key.roll())
        .put("sample", key.sample())
        .put("layer", corrected.place().layer())
        .put(
            "layerName",
            corrected.isOfTemperature()
                ? "Film temperature, \u00b0C"
                : layerName(key.structure(), corrected.place().layer()))
        .put("unit", corrected.isOfTemperature() ? "C" : "um")
        .put("lane", corrected.place().lane())
        .put("oldUm", corrected.oldUm())
        .put("newUm", corrected.newUm())
        .put("by", corrected.sender().by())
        .put("why", corrected.sender().why())
        .put("at", Wire.time(corrected.at(), plant.zone()))
        .put("file", corrected.file().id())
        .put("fileName", corrected.file().name());
  }

  private String layerName(String code, int layer) {
    return plant
        .structures()
        .find(code)
        .map(Structure::reported)
        .filter(reported -> layer <= reported.size())
        .map(reported -> reported.get(layer - 1).name())
        .orElse("layer " + layer);
  }
}
