package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structures;
import dev.filmward.intake.MappedOpening.Surroundings;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Consumer;

/**
 * Takes a file of readings (CSV, long or wide layout), gives readings or rejections.
 *
 * <p>How the file is written is taken from its first line, or from a mapping that has its headings.
 * Rows are read one after the other and none is kept, so that memory does not grow with the file. A
 * row that cannot be used is rejected and the next one read; only a header that cannot be used
 * refuses the file. Immutable; a parser may be used for several files at once.
 */
public final class ReadingsParser {
  private final Structures structures;
  private final ZoneId plantZone;
  private final Mappings mappings;

  /**
   * @param plantZone where times without an offset are local times
   */
  public ReadingsParser(Structures structures, ZoneId plantZone) {
    this(structures, plantZone, Mappings.NONE);
  }

  /**
   * @param mappings for files with headings of their own
   */
  public ReadingsParser(Structures structures, ZoneId plantZone, Mappings mappings) {
    this.structures = structures;
    this.plantZone = plantZone;
    this.mappings = mappings;
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
    if (mappings.all().isEmpty()) {
      return plain(in, fileName);
    }
    byte[] head = HeadText.take(in);
    HeadText text = HeadText.of(head);
    List<Mappings.Fit> fits = mappings.fitting(text, fileName);
    if (fits.isEmpty()) {
      return plain(HeadText.again(head, in), fileName);
    }
    Surroundings around = new Surroundings(fileName, structures, plantZone);
    return new MappedFileHead(new MappedOpening(fits.get(0), head, text, around), in);
  }

  private PlainHead plain(InputStream in, String fileName) throws IOException, FileRefused {
    Utf8Input input = Utf8Input.open(in);
    ByteBlocks blocks = new ByteBlocks(input.stream());
    Text text = new Text();
    HeaderReader header = new HeaderReader(fileName, blocks, text);
    Dialect dialect = header.read(input.encoding(), structures);
    return new PlainHead(
        new FileSteps.Source(fileName, dialect, blocks, text),
        new FileSteps.Setting(structures, plantZone),
        new PlainHead.HeaderLine(header.headerLine(), input.markLength()));
  }
}
