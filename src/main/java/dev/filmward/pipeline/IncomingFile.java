package dev.filmward.pipeline;

import dev.filmward.film.ReadingSink;
import dev.filmward.store.FileEntry.Sender;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.UnaryOperator;

/**
 * A file of readings that has come.
 *
 * @param name as people know it
 * @param source by which way it came: watch, import, upload, mended, demo or live
 * @param sender who sent it and why
 * @param opener opens its bytes; the reader closes them
 * @param view puts something between the file and its reader, for example other times; usually
 *     nothing
 */
public record IncomingFile(
    String name, String source, Sender sender, Opener opener, UnaryOperator<ReadingSink> view) {

  /** Opens a stream of bytes. */
  @FunctionalInterface
  public interface Opener {
    InputStream open() throws IOException;
  }

  public IncomingFile(String name, String source, Opener opener) {
    this(name, source, Sender.NOT_NAMED, opener, UnaryOperator.identity());
  }

  /** The same, sent by somebody. */
  public IncomingFile from(Sender other) {
    return new IncomingFile(name, source, other, opener, view);
  }
}
