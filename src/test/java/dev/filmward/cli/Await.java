package dev.filmward.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Callable;

/** Waits for what comes soon, and gives up with words. */
final class Await {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final Duration BETWEEN = Duration.ofMillis(20);

  private Await() {}

  static void until(String what, Callable<Boolean> condition) throws Exception {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!condition.call()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("not within " + PATIENCE + ": " + what);
      }
      Thread.sleep(BETWEEN.toMillis());
    }
  }

  static JsonNode json(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }
}
