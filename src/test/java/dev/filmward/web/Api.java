package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import dev.filmward.access.TestPeople;
import dev.filmward.people.Secret;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** Talks to a server on this machine as its pages do. Thread-safe. */
public final class Api {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final HttpClient client = HttpClient.newHttpClient();
  private final String root;
  private volatile String cookie = "";

  /** Talks as somebody who is not signed in. */
  public Api(int port) {
    this.root = "http://127.0.0.1:" + port;
  }

  /** Signs in with the password of the tests, as a browser does. */
  public Api signIn(String name) {
    Answer answer =
        post(
            "/api/v1/session",
            "{\"name\": \"" + name + "\", \"password\": \"" + TestPeople.PASSWORD + "\"}");
    if (answer.status() != 200) {
      throw new IllegalStateException(name + " cannot sign in: " + answer.text());
    }
    return this;
  }

  /** Goes on with a session that was begun elsewhere. */
  public Api as(Secret session) {
    cookie = "filmward=" + session.text();
    return this;
  }

  /** What the browser would show of itself, as name=secret; empty where nobody is signed in. */
  public String cookie() {
    return cookie;
  }

  /**
   * An answer.
   *
   * @param json missing where the answer is no JSON
   */
  public record Answer(int status, HttpHeaders headers, String text, JsonNode json) {
    public String header(String name) {
      return headers.firstValue(name).orElse("");
    }
  }

  public Answer get(String path) {
    return send(request(path).GET());
  }

  public Answer post(String path, String json) {
    return send(change(path, "application/json", json));
  }

  public Answer upload(String name, String csv) {
    return send(change("/api/v1/files?name=" + encoded(name), "text/csv", csv));
  }

  /** A request that changes something, with what our pages send along. */
  public HttpRequest.Builder change(String path, String contentType, String body) {
    return request(path)
        .header("X-Filmward", "1")
        .header("Content-Type", contentType)
        .POST(BodyPublishers.ofString(body));
  }

  public HttpRequest.Builder request(String path) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + path)).timeout(PATIENCE);
    return cookie.isEmpty() ? request : request.header("Cookie", cookie);
  }

  /** A request whose answer goes on and on. */
  HttpRequest.Builder stream(String path) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + path));
    request.header("Accept", "text/event-stream");
    return cookie.isEmpty() ? request : request.header("Cookie", cookie);
  }

  public Answer send(HttpRequest.Builder request) {
    try {
      HttpResponse<String> answer = client.send(request.build(), BodyHandlers.ofString());
      answer.headers().firstValue("Set-Cookie").ifPresent(this::keep);
      return new Answer(answer.statusCode(), answer.headers(), answer.body(), json(answer));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The series of a layer of the small film, 0 for its total. */
  public JsonNode series(int position) {
    String kind = position == 0 ? "total" : "layer";
    return get("/api/v1/series?line="
            + encoded(SmallFilm.LINE)
            + "&structure="
            + SmallFilm.CODE
            + "&kind="
            + kind
            + "&position="
            + position)
        .json();
  }

  /** Freezes the limits of the small film from its first 25 samples. */
  public Answer freeze() {
    return post(
        "/api/v1/limits/freeze",
        """
        {"line": "Blown 1", "structure": "DUO-50", "reason": "quiet start"}
        """);
  }

  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private void keep(String setCookie) {
    String pair = setCookie.split(";", 2)[0];
    cookie = pair.endsWith("=") ? "" : pair;
  }

  private static JsonNode json(HttpResponse<String> answer) throws IOException {
    boolean isJson =
        answer.headers().firstValue("Content-Type").orElse("").startsWith("application/json");
    return isJson ? MAPPER.readTree(answer.body()) : MissingNode.getInstance();
  }
}
