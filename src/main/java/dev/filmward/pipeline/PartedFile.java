package dev.filmward.pipeline;

import dev.filmward.intake.FileCount;
import dev.filmward.intake.FilePart;
import dev.filmward.intake.PartCount;
import dev.filmward.intake.PlainHead;
import dev.filmward.intake.Rejection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;

/**
 * Reads a file in parts on several threads, with the result of one: parts are joined in the order
 * of the file by the thread that calls, and one that was not read from the start of a row, as its
 * predecessor then shows, is read again. For one thread.
 */
final class PartedFile {
  private final Path file;
  private final PlainHead head;
  private final Cut cut;
  private final Consumer<Rejection> rejections;
  private final PartCount.Sum sum = new PartCount.Sum();
  private FilePart truth;
  private long lines;

  /**
   * How a file is cut.
   *
   * @param bytes length of a part, at least 1
   */
  record Cut(long bytes, int threads) {
    static Cut usual() {
      return new Cut(8L << 20, Runtime.getRuntime().availableProcessors());
    }

    int parts(long length) {
      return Math.toIntExact(Math.max(1, (length + bytes - 1) / bytes));
    }
  }

  PartedFile(Path file, PlainHead head, Cut cut, Consumer<Rejection> rejections) {
    this.file = file;
    this.head = head;
    this.cut = cut;
    this.rejections = rejections;
    this.truth = FilePart.fromRow(head.firstRow(), Long.MAX_VALUE);
    this.lines = head.linesBefore();
  }

  /** Reads the file and hands its samples on. */
  FileCount read(AnalysisScope scope, SampleJoin.Receiver receiver) throws IOException {
    SampleJoin join = new SampleJoin(scope, receiver);
    int parts = cut.parts(Files.size(file) - head.firstRow());
    try (PartQueue<ReadPart> queue =
        new PartQueue<>(
            parts,
            cut.threads(),
            () -> new ReadPart(file, head, scope),
            (number, part) -> part.read(guess(number, parts)))) {
      for (int number = 0; number < parts; number++) {
        ReadPart part = queue.next();
        settle(part, guess(number, parts).stop());
        join.add(part);
        queue.handBack(part);
      }
    }
    join.finish();
    return head.count(sum);
  }

  private FilePart guess(int number, int parts) {
    long start = head.firstRow() + number * cut.bytes();
    long stop = number == parts - 1 ? Long.MAX_VALUE : start + cut.bytes();
    return number == 0 ? FilePart.fromRow(start, stop) : FilePart.somewhere(start, stop);
  }

  private void settle(ReadPart part, long stop) throws IOException {
    if (part.isRight(truth)) {
      part.rejections().forEach(rejection -> rejections.accept(rejection.lower(lines)));
    } else {
      part.read(truth.until(stop), rejection -> rejections.accept(rejection.lower(lines)));
    }
    PartCount count = part.count();
    sum.add(count);
    lines += count.lines();
    truth = count.next();
  }
}
