package dev.filmward.pipeline;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Does numbered pieces of work on several threads and gives their results in order; the thread that
 * asks works too, and is the only one where there is one processor. Results that wait are few, and
 * are used again.
 */
final class PartQueue<R> implements AutoCloseable {
  private static final int AHEAD_PER_THREAD = 1;

  private final int count;
  private final Supplier<R> fresh;
  private final Work<R> work;
  private final int ahead;
  private final List<Thread> helpers = new ArrayList<>();
  private final Map<Integer, R> done = new HashMap<>();
  private final Deque<R> spare = new ArrayDeque<>();
  private int claimed;
  private int given;
  private boolean closed;
  private @Nullable Exception failure;

  /** What is done to a result, which may have been used before. */
  interface Work<R> {
    void on(int number, R result) throws IOException;
  }

  PartQueue(int count, int threads, Supplier<R> fresh, Work<R> work) {
    this.count = count;
    this.fresh = fresh;
    this.work = work;
    this.ahead = AHEAD_PER_THREAD * threads;
    for (int i = 1; i < Math.min(threads, count); i++) {
      Thread helper = new Thread(this::help, "reader-" + i);
      helper.setDaemon(true);
      helpers.add(helper);
      helper.start();
    }
  }

  /** The next result; hand it back when it is needed no more. */
  R next() throws IOException {
    try {
      for (int mine = claimUnlessDone(); mine != count; mine = claimUnlessDone()) {
        perform(mine);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while reading", e);
    }
    return give();
  }

  synchronized void handBack(R result) {
    spare.push(result);
  }

  @Override
  public void close() {
    synchronized (this) {
      closed = true;
      notifyAll();
    }
    for (Thread helper : helpers) {
      joinPatiently(helper);
    }
  }

  private void help() {
    try {
      for (int mine = claimOrWait(); mine != count; mine = claimOrWait()) {
        perform(mine);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized int claimOrWait() throws InterruptedException {
    int mine = claim();
    while (mine == count && claimed < count && !closed) {
      wait();
      mine = claim();
    }
    return closed ? count : mine;
  }

  private synchronized int claimUnlessDone() throws InterruptedException, IOException {
    while (!done.containsKey(given)) {
      rethrow();
      int mine = claim();
      if (mine != count) {
        return mine;
      }
      wait();
    }
    return count;
  }

  private synchronized R give() {
    R result = done.remove(given);
    if (result == null) {
      throw new IllegalStateException("piece " + given + " was not done");
    }
    given++;
    notifyAll();
    return result;
  }

  /** The number of a piece to do now, or {@code count}. */
  private int claim() {
    return claimed < Math.min(count, given + ahead) && failure == null ? claimed++ : count;
  }

  private void perform(int number) {
    R result = take();
    try {
      work.on(number, result);
      finish(number, result);
    } catch (IOException | RuntimeException e) {
      fail(e);
    }
  }

  private synchronized R take() {
    return spare.isEmpty() ? fresh.get() : spare.pop();
  }

  private synchronized void finish(int number, R result) {
    done.put(number, result);
    notifyAll();
  }

  private synchronized void fail(Exception e) {
    if (failure == null) {
      failure = e;
    }
    claimed = count;
    notifyAll();
  }

  private void rethrow() throws IOException {
    if (failure instanceof IOException e) {
      throw e;
    }
    if (failure instanceof RuntimeException e) {
      throw e;
    }
  }

  private static void joinPatiently(Thread helper) {
    try {
      helper.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
