package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
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

  public Api(int port) {
    this.root = "http://127.0.0.1:" + port;
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
    return HttpRequest.newBuilder(URI.create(root + path)).timeout(PATIENCE);
  }

  public Answer send(HttpRequest.Builder request) {
    try {
      HttpResponse<String> answer = client.send(request.build(), BodyHandlers.ofString());
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
        {"line": "Blown 1", "structure": "DUO-50", "by": "Kim", "reason": "quiet start"}
        """);
  }

  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private static JsonNode json(HttpResponse<String> answer) throws IOException {
    boolean isJson =
        answer.headers().firstValue("Content-Type").orElse("").startsWith("application/json");
    return isJson ? MAPPER.readTree(answer.body()) : MissingNode.getInstance();
  }
}
