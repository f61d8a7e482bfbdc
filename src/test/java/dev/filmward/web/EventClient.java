package dev.filmward.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** Listens to the event stream as a browser does, after the HTML standard's event stream format. */
final class EventClient implements AutoCloseable {
  static final String COMMENT = "(comment)";
  static final String END = "(end of stream)";

  private final BlockingQueue<Event> arrived = new LinkedBlockingQueue<>();
  private final InputStream body;

  private EventClient(InputStream body) {
    this.body = body;
    Thread reader = new Thread(this::read, "event-client");
    reader.setDaemon(true);
    reader.start();
  }

  /** What came; a comment and the end of the stream count as events with names of their own. */
  record Event(String name, String id, String data) {}

  static EventClient connect(Api api) {
    return connect(api, "");
  }

  /** Comes back after the event of that id, or for the first time where it is empty. */
  static EventClient connect(Api api, String lastEventId) {
    HttpRequest.Builder request = api.stream("/api/v1/events");
    if (!lastEventId.isEmpty()) {
      request.header("Last-Event-ID", lastEventId);
    }
    try {
      HttpResponse<InputStream> answer =
          HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofInputStream());
      if (answer.statusCode() != 200) {
        throw new IllegalStateException("the event stream answers " + answer.statusCode());
      }
      return new EventClient(answer.body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The next event whatever it is. */
  Event next(Duration patience) throws InterruptedException {
    return await(event -> true, patience);
  }

  /** The next event of a name; what comes before it is passed over. */
  Event next(String name, Duration patience) throws InterruptedException {
    return await(event -> event.name().equals(name), patience);
  }

  /** All events up to the first that is the last one waited for. */
  List<Event> upTo(Predicate<Event> last, Duration patience) throws InterruptedException {
    List<Event> events = new ArrayList<>();
    do {
      events.add(next(patience));
    } while (!last.test(events.get(events.size() - 1)));
    return events;
  }

  private Event await(Predicate<Event> wanted, Duration patience) throws InterruptedException {
    long end = System.nanoTime() + patience.toNanos();
    while (true) {
      Event event = arrived.poll(end - System.nanoTime(), TimeUnit.NANOSECONDS);
      if (event == null) {
        throw new AssertionError("nothing within " + patience);
      }
      if (wanted.test(event)) {
        return event;
      }
    }
  }

  private void read() {
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(body, StandardCharsets.UTF_8))) {
      Event event = new Event("message", "", "");
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        event = take(line, event);
      }
    } catch (IOException e) {
      // a stream may also end by breaking off
    }
    arrived.add(new Event(END, "", ""));
  }

  private Event take(String line, Event event) {
    if (line.startsWith(":")) {
      arrived.add(new Event(COMMENT, "", line.substring(1).strip()));
    } else if (line.isEmpty() && !event.data().isEmpty()) {
      arrived.add(event);
      return new Event("message", "", "");
    }
    String value = line.substring(line.indexOf(':') + 1).strip();
    if (line.startsWith("event:")) {
      return new Event(value, event.id(), event.data());
    }
    if (line.startsWith("id:")) {
      return new Event(event.name(), value, event.data());
    }
    return line.startsWith("data:") ? new Event(event.name(), event.id(), value) : event;
  }

  @Override
  public void close() throws IOException {
    body.close();
  }
}
