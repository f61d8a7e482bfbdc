package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.NoSuchElementException;
import java.util.Optional;

/** Reads what a request says; what is wrong with it is an {@link IllegalArgumentException}. */
final class Requests {
  private static final int LONGEST_TEXT = 4000;
  private static final long LARGEST_JSON_BODY = 64_000;

  private Requests() {}

  /** A query parameter that must be there. */
  static String text(Context ctx, String name) {
    String value = ctx.queryParam(name);
    if (value == null) {
      throw new IllegalArgumentException("the address needs " + name + "=...");
    }
    return value;
  }

  /** A query parameter that may be left out; at most so long as a text of a body may be. */
  static String textOr(Context ctx, String name, String other) {
    String value = ctx.queryParam(name);
    if (value != null && value.length() > LONGEST_TEXT) {
      throw new IllegalArgumentException(name + " is longer than " + LONGEST_TEXT + " characters");
    }
    return value == null ? other : value;
  }

  /** A query parameter that is a whole number, where it is there. */
  static Optional<Long> number(Context ctx, String name) {
    String value = ctx.queryParam(name);
    if (value == null || value.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Long.parseLong(value));
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(name + " is a whole number, not \"" + value + "\"", e);
    }
  }

  /** A query parameter that is a time with its offset, where it is there. */
  static Optional<Instant> momentOf(Context ctx, String name) {
    String value = ctx.queryParam(name);
    return value == null || value.isEmpty() ? Optional.empty() : Optional.of(moment(name, value));
  }

  /** The number in the path. */
  static long id(Context ctx) {
    try {
      return Long.parseLong(ctx.pathParam("id"));
    } catch (NumberFormatException e) {
      throw new NoSuchElementException("there is nothing under " + ctx.path());
    }
  }

  static JsonNode body(Context ctx) throws IOException {
    JsonNode body;
    try (InputStream in = new BoundedStream(ctx.bodyInputStream(), LARGEST_JSON_BODY)) {
      body = Wire.mapper().readTree(in);
    }
    if (body == null || !body.isObject()) {
      throw new IllegalArgumentException("the body must be a JSON object");
    }
    return body;
  }

  /** Who does it, by the session or the token that the request shows. */
  static String by(Context ctx) {
    return Gate.actor(ctx).name();
  }

  /** The same; what a body says about it is not believed. */
  static String by(Context ctx, JsonNode body) {
    return by(ctx);
  }

  /** A text of the body that may be left out or be empty. */
  static String fieldOr(JsonNode body, String name, String other) {
    return body.path(name).asText("").isBlank() ? other : field(body, name);
  }

  /** A time of the body with its offset; another one where it is left out. */
  static Instant moment(JsonNode body, String name, Instant other) {
    String text = body.path(name).asText("");
    return text.isEmpty() ? other : moment(name, text);
  }

  private static Instant moment(String name, String text) {
    try {
      return OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\""
              + name
              + "\" is a time with its offset, like 2026-11-25T14:30:00+01:00, not \""
              + text
              + "\"",
          e);
    }
  }

  /** A whole number of the body that must be there. */
  static int wholeNumber(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (!value.isInt()) {
      throw new IllegalArgumentException("\"" + name + "\" is a whole number");
    }
    return value.asInt();
  }

  /** An array of the body that must be there. */
  static JsonNode array(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (!value.isArray()) {
      throw new IllegalArgumentException("\"" + name + "\" is an array");
    }
    return value;
  }

  /** A text of the body that must be there and not be blank. */
  static String field(JsonNode body, String name) {
    String value = body.path(name).asText("").strip();
    if (value.isEmpty()) {
      throw new IllegalArgumentException("\"" + name + "\" is missing");
    }
    if (value.length() > LONGEST_TEXT) {
      throw new IllegalArgumentException(
          "\"" + name + "\" is longer than " + LONGEST_TEXT + " characters");
    }
    return value;
  }

  /** A password of the body, taken as it is: blanks are part of it. */
  static String secret(JsonNode body, String name) {
    String value = body.path(name).asText("");
    if (value.isEmpty()) {
      throw new IllegalArgumentException("\"" + name + "\" is missing");
    }
    return value;
  }
}
