package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/**
 * Answers that many pages ask for after each event, worked out once for all of them: a question is
 * known by its path and query, and its answer holds until what it was read from changes. Who asks
 * while it is being worked out waits for it, and takes it where it was begun after the question
 * came. Only for what everybody who may ask is answered alike. Keeps some megabytes. Thread-safe.
 */
final class Answers {
  private static final long MOST_BYTES = 16 << 20;
  private static final int MOST_QUESTIONS = 500;

  private final Map<String, Question> questions = new LinkedHashMap<>(16, 0.75f, true);
  private long bytes;

  /**
   * An answer that was just worked out.
   *
   * @param isCurrent whether it would be the same if it was worked out again
   */
  record Fresh(ObjectNode json, BooleanSupplier isCurrent) {}

  /** An answer as it is sent. */
  private static final class Answer {
    private final byte[] json;
    private final String tag;
    private final long begunAt;
    private final BooleanSupplier isCurrent;

    private Answer(Fresh fresh, long begunAt) {
      this.json = Wire.bytes(fresh.json);
      this.tag = tag(json);
      this.begunAt = begunAt;
      this.isCurrent = fresh.isCurrent;
    }

    /** Whether it may be given to a question that came at a time. */
    private boolean answers(long cameAt) {
      return begunAt - cameAt >= 0 || isCurrent.getAsBoolean();
    }
  }

  /** Answers a request by what is known, or else works it out. */
  void give(Context ctx, Supplier<Fresh> work) {
    long cameAt = System.nanoTime();
    String query = ctx.queryString();
    String key = query == null ? ctx.path() : ctx.path() + '?' + query;
    Question question = question(key);
    Answer answer = question.answer(cameAt, work);
    keepWithin(key, question);
    ctx.header("ETag", answer.tag);
    ctx.contentType("application/json");
    ctx.result(answer.json);
  }

  private synchronized Question question(String key) {
    return questions.computeIfAbsent(key, any -> new Question());
  }

  /** Forgets what nobody asked for longest. */
  private synchronized void keepWithin(String key, Question question) {
    if (questions.get(key) != question) {
      return;
    }
    bytes += question.growth();
    Iterator<Question> oldest = questions.values().iterator();
    while ((bytes > MOST_BYTES || questions.size() > MOST_QUESTIONS) && oldest.hasNext()) {
      Question forgotten = oldest.next();
      bytes -= forgotten.counted;
      oldest.remove();
    }
  }

  /** One question: those who ask it take turns. */
  private static final class Question {
    private @Nullable Answer known;

    /** Bytes that are counted for it; guarded by the map of questions. */
    private long counted;

    private volatile long size;

    private synchronized Answer answer(long cameAt, Supplier<Fresh> work) {
      if (known == null || !known.answers(cameAt)) {
        long begunAt = System.nanoTime();
        known = new Answer(work.get(), begunAt);
        size = known.json.length;
      }
      return known;
    }

    private long growth() {
      long growth = size - counted;
      counted += growth;
      return growth;
    }
  }

  /** Another one for other bytes, so that a browser that has them need not be sent them again. */
  private static String tag(byte[] json) {
    CRC32C sum = new CRC32C();
    sum.update(json);
    return "\"" + Long.toHexString(sum.getValue()) + "-" + Integer.toHexString(json.length) + "\"";
  }
}
