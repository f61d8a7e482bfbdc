package dev.filmward.cli;

import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.Plant;
import dev.filmward.report.ReportDesk;
import dev.filmward.report.ReportSchedule;
import dev.filmward.report.WeekReader;
import dev.filmward.telling.Post;
import dev.filmward.web.WebServer;
import dev.filmward.web.WebServer.Options;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CountDownLatch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a plant and what serves it until the process is asked to stop, then closes all of it in the
 * opposite order, the plant last.
 */
final class Serving implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Serving.class);

  private final Plant plant;
  private final Deque<AutoCloseable> held = new ArrayDeque<>();
  private final Deque<AutoCloseable> cleanUp = new ArrayDeque<>();
  private final CountDownLatch stop = new CountDownLatch(1);
  private final CountDownLatch stopped = new CountDownLatch(1);
  private int port;

  Serving(Plant plant) {
    this.plant = plant;
    Footprint.modest();
    Runtime.getRuntime().addShutdownHook(new Thread(this::stopAndWait, "stop"));
  }

  void hold(AutoCloseable part) {
    held.push(part);
    if (part instanceof WebServer server) {
      port = server.port();
    }
  }

  /** Does something when all is closed. */
  void afterwards(AutoCloseable last) {
    cleanUp.push(last);
  }

  /** Says where the dashboard is, on standard output, for people and for scripts. */
  void announce(String what, Options options) {
    String scheme = options.doors().tls().isPresent() ? "https" : "http";
    String host = options.host().contains(":") ? "[" + options.host() + "]" : options.host();
    System.out.println(what + ". Open " + scheme + "://" + host + ":" + port + "/");
    System.out.flush();
  }

  void untilStopped() throws InterruptedException {
    stop.await();
  }

  @Override
  public void close() {
    while (!held.isEmpty()) {
      close(held.pop());
    }
    close(plant);
    cleanUp.forEach(Serving::close);
    stopped.countDown();
  }

  private static void close(AutoCloseable part) {
    try {
      part.close();
    } catch (Exception e) {
      LOG.warn("Closing {} failed", part, e);
    }
  }

  private void stopAndWait() {
    stop.countDown();
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Makes and sends weekly reports when they are due. */
  static AutoCloseable reports(Plant plant) {
    WeekReader reader = new WeekReader(plant, new Version().getVersion()[0]);
    return ReportSchedule.start(
        plant, new ReportDesk(plant, reader), Post.real(), new Passwords(System.getenv()));
  }
}
