package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structures;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.function.Consumer;

/**
 * Takes a file of readings (CSV, long or wide layout), gives readings or rejections.
 *
 * <p>How the file is written is taken from its first line. Rows are read one after the other and
 * none is kept, so that memory does not grow with the file. A row that cannot be used is rejected
 * and the next one read; only a header that cannot be used refuses the file. Immutable; a parser
 * may be used for several files at once.
 */
public final class ReadingsParser {
  private final Structures structures;
  private final ZoneId plantZone;

  /**
   * @param plantZone where times without an offset are local times
   */
  public ReadingsParser(Structures structures, ZoneId plantZone) {
    this.structures = structures;
    this.plantZone = plantZone;
  }

  /**
   * Reads the whole stream; does not close it.
   *
   * @param fileName for messages
   * @throws FileRefused if the header cannot be used; nothing was delivered then
   */
  public FileCount parse(
      InputStream in, String fileName, ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    return head(in, fileName).readRest(readings, rejections);
  }

  /**
   * Reads the header only; does not close the stream.
   *
   * @throws FileRefused if the header cannot be used
   */
  public FileHead head(InputStream in, String fileName) throws IOException, FileRefused {
    Utf8Input input = Utf8Input.open(in);
    ByteBlocks blocks = new ByteBlocks(input.stream());
    Text text = new Text();
    Dialect dialect = new HeaderReader(fileName, blocks, text).read(input.encoding(), structures);
    return new FileHead(
        new FileSteps.Source(fileName, dialect, blocks, text),
        new FileSteps.Setting(structures, plantZone),
        input.markLength());
  }
}
