package dev.filmward.pipeline;

import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What somebody waits for: how far it is, and whether it is still wanted. Whatever takes long asks
 * {@link #goOn} between its pieces, so that a transaction it is in is undone. Thread-safe.
 */
public final class LongWork {
  private static final ThreadLocal<LongWork> CURRENT = ThreadLocal.withInitial(LongWork::new);

  private final AtomicLong all = new AtomicLong();
  private final AtomicLong done = new AtomicLong();
  private volatile boolean isCancelled;

  /** What this thread works at; nobody cancels it where nobody watches it. */
  public static LongWork current() {
    return CURRENT.get();
  }

  /** Does something as this work. */
  public <T> T during(Callable<T> what) throws Exception {
    LongWork before = CURRENT.get();
    CURRENT.set(this);
    try {
      return what.call();
    } finally {
      CURRENT.set(before);
    }
  }

  /** There is so much more to do, in pieces of any kind. */
  public void more(long pieces) {
    all.addAndGet(pieces);
  }

  /** So much more is done. */
  public void did(long pieces) {
    done.addAndGet(pieces);
  }

  /** From 0 to 1; empty where it is not known how much there is to do. */
  public OptionalDouble share() {
    long of = all.get();
    return of > 0
        ? OptionalDouble.of(Math.min(1, done.get() / (double) of))
        : OptionalDouble.empty();
  }

  /** Nobody wants it any more. */
  public void cancel() {
    isCancelled = true;
  }

  public boolean isCancelled() {
    return isCancelled;
  }

  /**
   * Goes on.
   *
   * @throws CancellationException if nobody wants it any more
   */
  public void goOn() {
    if (isCancelled) {
      throw new CancellationException("it was cancelled, and nothing of it holds");
    }
  }
}
