package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.Consumer;

/** Reads parts of one file, one after the other. One owner, one thread at a time. */
public final class PartReader {
  private final String fileName;
  private final Dialect dialect;
  private final FileSteps.Setting setting;
  private final byte[] array = ByteBlocks.newArray();

  PartReader(String fileName, Dialect dialect, FileSteps.Setting setting) {
    this.fileName = fileName;
    this.dialect = dialect;
    this.setting = setting;
  }

  /**
   * Reads a part; does not close the stream. Rejections count lines from the part's first one.
   *
   * @param in the file from {@link FilePart#opensAt} on
   */
  public PartCount read(
      InputStream in, FilePart part, ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException {
    ByteBlocks blocks = new ByteBlocks(in, part.opensAt(), part.stop(), array);
    if (part.opensAt() < part.start()) {
      blocks.skipLine();
    }
    long begin = blocks.offset();
    FileSteps steps =
        new FileSteps(
            new FileSteps.Source(fileName, dialect, blocks, new Text()),
            setting,
            readings,
            rejections);
    steps.reader().readLineByLineUntil(part.lineByLineUntil());
    FileRun run = steps.run();
    run.takeAll();
    FilePart next = part.after(blocks.offset(), steps.reader().lineByLineUntil());
    return new PartCount(begin, next, blocks.line - 1, run.counts(), run.oddities());
  }
}
