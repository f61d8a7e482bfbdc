package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Whether Filmward can do its work: up where the database answers within a second. Anybody may ask,
 * so it names the part that is down and nothing more. Where the database hangs, a few questions
 * wait for it and later ones are answered at once. Thread-safe.
 */
final class HealthResource implements AutoCloseable {
  private static final int MOST_WAITING = 4;
  private static final int IDLE_S = 5;
  private static final int UNAVAILABLE = 503;

  private final Runnable question;
  private final ExecutorService waiting =
      new ThreadPoolExecutor(
          0,
          MOST_WAITING,
          IDLE_S,
          TimeUnit.SECONDS,
          new SynchronousQueue<>(),
          HealthResource::daemon);

  HealthResource(Plant plant) {
    this(
        () ->
            plant
                .store()
                .read(
                    tables -> {
                      tables.soundness().answers();
                      return true;
                    }));
  }

  /**
   * @param question comes back where the database answers
   */
  HealthResource(Runnable question) {
    this.question = question;
  }

  void get(Context ctx) throws InterruptedException {
    ObjectNode answer = Wire.object();
    ctx.header("Cache-Control", "no-store");
    if (databaseAnswers()) {
      ctx.json(answer.put("status", "up"));
    } else {
      ctx.status(UNAVAILABLE).json(answer.put("status", "down").put("part", "database"));
    }
  }

  boolean databaseAnswers() throws InterruptedException {
    try {
      Future<?> answer = waiting.submit(question);
      answer.get(1, TimeUnit.SECONDS);
      return true;
    } catch (ExecutionException | TimeoutException | RejectedExecutionException e) {
      return false;
    }
  }

  @Override
  public void close() {
    waiting.shutdownNow();
  }

  private static Thread daemon(Runnable task) {
    Thread thread = new Thread(task, "health");
    thread.setDaemon(true);
    return thread;
  }
}
