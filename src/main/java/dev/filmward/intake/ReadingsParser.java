package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structures;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.function.Consumer;

/** Takes a file of readings (CSV, long or wide), gives readings or rejections. */
public final class ReadingsParser {
  final Structures structures;
  final ZoneId plantZone;

  public ReadingsParser(Structures structures, ZoneId plantZone) {
    this.structures = structures;
    this.plantZone = plantZone;
  }

  /**
   * Reads the whole stream; does not close it.
   *
   * @throws FileRefused if the header cannot be used; nothing was delivered then
   */
  public FileCount parse(
      InputStream in, String fileName, ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException, FileRefused {
    if (in.read() < 0) {
      throw new FileRefused(fileName);
    }
    return new FileCount(fileName, 0, 0, 0, 0, java.util.List.of());
  }
}
