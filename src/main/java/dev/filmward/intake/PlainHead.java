package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A file in one of the house formats whose header has been read. The rest is read once in one go,
 * or in parts.
 *
 * <p>A file can be read in parts where it is UTF-8 and its lines end with line feeds. A part is
 * read on the assumption that a row starts at the first line that starts in it; {@link
 * PartCount#begin} and {@link PartCount#next} show whether that held, which within a quoted field
 * it does not. Parts may be read at the same time, each through a stream and into a sink of its
 * own. Apart from {@link #readRest}, which is for one thread and only once, immutable.
 */
public final class PlainHead extends FileHead {
  private final FileSteps.Source source;
  private final FileSteps.Setting setting;
  private final HeaderLine header;
  private final long firstRow;
  private final long linesBefore;
  private final Notes notes;

  PlainHead(FileSteps.Source source, FileSteps.Setting setting, HeaderLine header) {
    this.source = source;
    this.header = header;
    this.setting = setting;
    this.firstRow = header.markLength() + source.blocks().offset();
    this.linesBefore = source.blocks().line - 1;
    this.notes = new Notes(source.dialect(), setting.plantZone());
  }

  /** The header, and how many bytes of a byte order mark stand before it. */
  record HeaderLine(String text, int markLength) {}

  @Override
  public Optional<KeptHead> kept() {
    return KeptHead.of(header.text(), Optional.empty());
  }

  @Override
  public boolean isDivisible() {
    return source.dialect().encoding() == Encoding.UTF_8 && source.blocks().linesEndWithLineFeeds();
  }

  /** Where in the file the line after the header starts. */
  public long firstRow() {
    return firstRow;
  }

  /** How many lines come before that. */
  public long linesBefore() {
    return linesBefore;
  }

  @Override
  public FileCount readRest(ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException {
    FileRun run = run(readings, rejections);
    run.takeAll();
    return count(run.counts(), run.oddities());
  }

  /** For one thread; there may be several. */
  public PartReader partReader() {
    return new PartReader(source.fileName(), source.dialect(), setting);
  }

  @Override
  RowRun rows(ReadingSink readings, Consumer<Rejection> rejections) {
    FileRun run = run(readings, rejections);
    return new RowRun() {
      @Override
      public Dialect dialect() {
        return run.dialect();
      }

      @Override
      public boolean next() throws IOException {
        return run.next();
      }

      @Override
      public void take() {
        run.take();
      }

      @Override
      public List<String> cells() {
        return run.cells();
      }

      @Override
      public FileCount count() {
        return PlainHead.this.count(run.counts(), run.oddities());
      }
    };
  }

  FileRun run(ReadingSink readings, Consumer<Rejection> rejections) {
    return new FileSteps(source, setting, readings, rejections).run();
  }

  FileCount count(Tally.Counts counts, Set<Oddity> oddities) {
    return new FileCount(
        source.fileName(),
        counts.rows(),
        counts.readings(),
        counts.missing(),
        counts.quarantined(),
        notes.of(oddities));
  }

  /** What became of the whole file, of which these are the parts. */
  public FileCount count(PartCount.Sum parts) {
    return count(parts.counts(), parts.oddities());
  }
}
