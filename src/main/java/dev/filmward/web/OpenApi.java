package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * The description of the interface (OpenAPI 3.1), joined from a file a group of routes. Each file
 * has {@code paths} and {@code schemas}; {@code frame.yaml} has what all share. Immutable.
 */
final class OpenApi {
  /** The files under {@code openapi/}, the frame first. */
  static final List<String> FILES =
      List.of(
          "frame",
          "lines",
          "alarms",
          "care",
          "diagnosis",
          "limits",
          "gauges",
          "tests",
          "screening",
          "files",
          "structures",
          "shifts",
          "telling",
          "figures",
          "gauge-check",
          "studies",
          "reports",
          "people",
          "machines");

  private static final String PATHS = "paths";

  private final String json;

  private OpenApi(JsonNode document) {
    this.json = document.toString();
  }

  static OpenApi load() {
    ObjectMapper yaml = new YAMLMapper();
    ObjectNode document = read(yaml, FILES.get(0));
    ObjectNode paths = document.putObject(PATHS);
    ObjectNode schemas = (ObjectNode) document.path("components").path("schemas");
    for (String file : FILES.subList(1, FILES.size())) {
      ObjectNode group = read(yaml, file);
      add(group.path(PATHS), paths);
      add(group.path("schemas"), schemas);
    }
    return new OpenApi(document);
  }

  String json() {
    return json;
  }

  void get(Context ctx) {
    ctx.contentType("application/json").result(json);
  }

  private static void add(JsonNode from, ObjectNode to) {
    from.properties()
        .forEach(
            entry -> {
              if (to.has(entry.getKey())) {
                throw new IllegalStateException(entry.getKey() + " is described twice");
              }
              to.set(entry.getKey(), entry.getValue());
            });
  }

  private static ObjectNode read(ObjectMapper yaml, String file) {
    String name = "/openapi/" + file + ".yaml";
    try (InputStream in = OpenApi.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is not in the jar");
      }
      return (ObjectNode) yaml.readTree(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
