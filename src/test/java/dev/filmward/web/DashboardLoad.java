package dev.filmward.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.DoubleStream;

/**
 * A plant's worth of open dashboards against a server on this machine: pages that listen to the
 * event stream, samples that arrive, pages that ask. What is asked for is asked at its time whether
 * or not the answer before has come, and a request's time counts from when it was due.
 */
public final class DashboardLoad {
  private static final int LINES = 10;
  private static final int LANES = 5;
  private static final double[] TARGETS = {14, 3, 5, 3, 25};
  private static final int BASELINE = 30;
  private static final Duration LAST_EVENTS = Duration.ofSeconds(20);

  private final int port;
  private final Map<String, String> headers;
  private final HttpClient http =
      HttpClient.newBuilder()
          .executor(Executors.newFixedThreadPool(4, DashboardLoad::daemon))
          .build();
  private final AtomicInteger samples = new AtomicInteger();
  private final Map<String, Long> sentAt = new ConcurrentHashMap<>();

  /**
   * @param headers of every request, such as those that say who asks
   */
  public DashboardLoad(int port, Map<String, String> headers) {
    this.port = port;
    this.headers = Map.copyOf(headers);
  }

  /** How many pages are open, and what happens in a second. */
  public record Plan(int dashboards, int samplesASecond, int requestsASecond, int seconds) {}

  /**
   * What was seen.
   *
   * @param answersMs sorted times of page requests, in milliseconds
   * @param samplesMs sorted times of samples from being due to being stored and judged
   * @param eventsMs sorted times from a sample's being sent to its event on a page
   * @param missing events of samples that did not come to a page
   * @param failed requests that were not answered with 200
   */
  public record Report(
      double[] answersMs, double[] samplesMs, double[] eventsMs, long missing, int failed) {
    public double answer(double share) {
      return at(answersMs, share);
    }

    public double event(double share) {
      return at(eventsMs, share);
    }

    public double sample(double share) {
      return at(samplesMs, share);
    }

    private static double at(double[] sorted, double share) {
      return sorted.length == 0
          ? Double.NaN
          : sorted[(int) Math.min(sorted.length - 1L, Math.round(share * sorted.length))];
    }
  }

  /** Teaches the server a film, gives each line a baseline and puts its limits in force. */
  public void prepare() {
    require(post("/api/v1/structures?name=load.yaml", structures()));
    for (int line = 0; line < LINES; line++) {
      StringBuilder csv = new StringBuilder(header());
      for (int i = 0; i < BASELINE; i++) {
        csv.append(rows(line, Instant.now().minusSeconds(2L * (BASELINE - i) + 5)));
      }
      require(post("/api/v1/files?name=baseline.csv", csv.toString()));
      require(
          post(
              "/api/v1/limits/freeze",
              "{\"line\": \"Line "
                  + line
                  + "\", \"structure\": \"LOAD\","
                  + " \"reason\": \"baseline\", \"subgroups\": "
                  + BASELINE
                  + ", \"autocorrelation\": \"accept\"}"));
    }
  }

  /** Runs the plan to its end. */
  public Report run(Plan plan) throws InterruptedException {
    sentAt.clear();
    List<Page> pages = new ArrayList<>();
    for (int i = 0; i < plan.dashboards(); i++) {
      pages.add(new Page());
    }
    for (Page page : pages) {
      page.awaitHello();
    }
    Times answers = new Times();
    Times stored = new Times();
    ScheduledExecutorService clock = Executors.newScheduledThreadPool(1, DashboardLoad::daemon);
    ScheduledFuture<?> arriving = every(clock, plan.samplesASecond(), () -> sample(stored));
    AtomicInteger asked = new AtomicInteger();
    ScheduledFuture<?> asking =
        every(clock, plan.requestsASecond(), () -> ask(asked.getAndIncrement(), answers));
    TimeUnit.SECONDS.sleep(plan.seconds());
    arriving.cancel(false);
    asking.cancel(false);
    clock.shutdown();
    waitFor(pages, answers, stored);
    double[] events = pages.stream().flatMapToDouble(Page::timesMs).sorted().toArray();
    long missing = (long) sentAt.size() * pages.size() - events.length;
    pages.forEach(Page::close);
    return new Report(
        answers.sorted(), stored.sorted(), events, missing, answers.failed() + stored.failed());
  }

  private static ScheduledFuture<?> every(
      ScheduledExecutorService clock, int aSecond, Runnable work) {
    long gap = aSecond == 0 ? TimeUnit.DAYS.toNanos(1) : TimeUnit.SECONDS.toNanos(1) / aSecond;
    return clock.scheduleAtFixedRate(work, gap, gap, TimeUnit.NANOSECONDS);
  }

  private void waitFor(List<Page> pages, Times answers, Times stored) throws InterruptedException {
    long end = System.nanoTime() + LAST_EVENTS.toNanos();
    while (System.nanoTime() < end
        && (answers.waiting() > 0
            || stored.waiting() > 0
            || pages.stream().anyMatch(page -> page.heard.size() < sentAt.size()))) {
      TimeUnit.MILLISECONDS.sleep(20);
    }
  }

  private void sample(Times stored) {
    int number = samples.get();
    String csv = header() + rows(number % LINES, Instant.now());
    sentAt.put(name(number), System.nanoTime());
    stored.measure(send(change("/api/v1/files?name=s.csv", csv)));
  }

  private void ask(int number, Times answers) {
    String line = "line=Line%20" + number % LINES + "&structure=LOAD";
    String path =
        switch (number % 5) {
          case 0, 1 -> "/api/v1/board";
          case 2 -> "/api/v1/alarms?state=open";
          case 3 -> "/api/v1/series?" + line + "&kind=layer&position=2&pixels=800";
          default -> "/layer.html?" + line;
        };
    answers.measure(send(request(path).GET().build()));
  }

  private CompletableFuture<HttpResponse<Void>> send(HttpRequest request) {
    return http.sendAsync(request, BodyHandlers.discarding());
  }

  private HttpResponse<String> post(String path, String body) {
    try {
      return http.send(change(path, body), BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void require(HttpResponse<String> answer) {
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(answer.uri() + " answers " + answer.body());
    }
  }

  private HttpRequest change(String path, String body) {
    return request(path)
        .header("X-Filmward", "1")
        .header("Content-Type", body.startsWith("{") ? "application/json" : "text/csv")
        .POST(BodyPublishers.ofString(body))
        .build();
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
    headers.forEach(request::header);
    return request;
  }

  private static String name(int number) {
    return "S" + number;
  }

  private static String header() {
    StringBuilder header = new StringBuilder("taken_at,line,structure,roll,sample,lane");
    for (int layer = 1; layer <= TARGETS.length; layer++) {
      header.append(",layer_").append(layer).append("_um");
    }
    return header.append('\n').toString();
  }

  private String rows(int line, Instant takenAt) {
    int number = samples.getAndIncrement();
    StringBuilder rows = new StringBuilder();
    for (int lane = 1; lane <= LANES; lane++) {
      rows.append(takenAt.truncatedTo(ChronoUnit.MICROS)).append(",Line ").append(line);
      rows.append(",LOAD,R").append(number / 100).append(',').append(name(number)).append(',');
      rows.append(lane);
      for (int layer = 0; layer < TARGETS.length; layer++) {
        double noise = Math.sin(number * 12.9898 + lane * 78.233 + layer * 37.719) * 43758.5453;
        double um = TARGETS[layer] * (1 + 0.02 * (noise - Math.floor(noise) - 0.5));
        rows.append(String.format(Locale.ROOT, ",%.3f", um));
      }
      rows.append('\n');
    }
    return rows.toString();
  }

  private static String structures() {
    StringBuilder yaml =
        new StringBuilder("structures:\n  - code: LOAD\n    name: Film\n    layers:\n");
    for (int layer = 0; layer < TARGETS.length; layer++) {
      yaml.append("      - {name: Layer ").append(layer + 1).append(", role: core, target: ");
      yaml.append(TARGETS[layer]).append(" um}\n");
    }
    return yaml.toString();
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "load");
    thread.setDaemon(true);
    return thread;
  }

  /** Times of requests from when they were due. */
  private static final class Times {
    private final List<Double> ms = new ArrayList<>();
    private final AtomicInteger failed = new AtomicInteger();
    private final AtomicInteger waiting = new AtomicInteger();

    private void measure(CompletableFuture<HttpResponse<Void>> answer) {
      long due = System.nanoTime();
      waiting.incrementAndGet();
      answer.whenComplete(
          (response, fault) -> {
            synchronized (ms) {
              ms.add((System.nanoTime() - due) / 1e6);
            }
            if (fault != null || response.statusCode() != 200) {
              failed.incrementAndGet();
            }
            waiting.decrementAndGet();
          });
    }

    private int waiting() {
      return waiting.get();
    }

    private int failed() {
      return failed.get();
    }

    private double[] sorted() {
      synchronized (ms) {
        return ms.stream().mapToDouble(Double::doubleValue).sorted().toArray();
      }
    }
  }

  /**
   * An open page: remembers when it heard of which sample. HTTP 1.0, so that nothing is chunked.
   */
  private final class Page {
    private final Socket socket;
    private final Map<String, Long> heard = new ConcurrentHashMap<>();
    private final CountDownLatch hello = new CountDownLatch(1);

    private Page() {
      try {
        socket = new Socket(InetAddress.getLoopbackAddress(), port);
        StringBuilder request = new StringBuilder("GET /api/v1/events HTTP/1.0\r\n");
        request.append("Host: 127.0.0.1:").append(port).append("\r\n");
        request.append("Accept: text/event-stream\r\n");
        headers.forEach((name, value) -> request.append(name + ": " + value + "\r\n"));
        socket
            .getOutputStream()
            .write(request.append("\r\n").toString().getBytes(StandardCharsets.US_ASCII));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      Thread reader = new Thread(null, this::read, "page", 128 * 1024);
      reader.setDaemon(true);
      reader.start();
    }

    private void read() {
      try (BufferedReader lines =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8), 2048)) {
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          int at = line.indexOf("\"sample\":\"");
          if (line.startsWith("data:") && at > 0) {
            int start = at + "\"sample\":\"".length();
            String sample = line.substring(start, line.indexOf('"', start));
            heard.putIfAbsent(sample, System.nanoTime());
          } else if (line.equals("event: hello")) {
            hello.countDown();
          }
        }
      } catch (IOException e) {
        // closed at the end, or cut off: what is missing is counted
      }
    }

    private void awaitHello() throws InterruptedException {
      if (!hello.await(20, TimeUnit.SECONDS)) {
        throw new IllegalStateException("a page was not let in");
      }
    }

    private DoubleStream timesMs() {
      return heard.entrySet().stream()
          .filter(entry -> sentAt.containsKey(entry.getKey()))
          .mapToDouble(entry -> (entry.getValue() - sentAt.get(entry.getKey())) / 1e6);
    }

    private void close() {
      try {
        socket.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
