package dev.filmward.pipeline;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * Files that lie in a folder or in folders below it, and whether they are still being written.
 *
 * <p>A file has settled when two looks found it the same; where its last line has no end, or it is
 * empty, only after {@value #UNFINISHED_MS} ms. Names that begin with a dot or end in {@code .part}
 * or {@code .tmp} are left alone: they are still being written. So are folders whose name begins
 * with a dot, summaries, and what was filed before. For one thread.
 */
final class WaitingFiles {
  private static final int UNFINISHED_MS = 1_000;

  private final Path folder;
  private Map<Path, Seen> seen = new HashMap<>();

  WaitingFiles(Path folder) {
    this.folder = folder;
  }

  /** A file that may be read. */
  record Settled(Path path, FileLook look) {
    /** The name as people know it, with the folders that it lies in. */
    String nameIn(Path inbox) {
      return inbox.relativize(path).toString().replace(File.separatorChar, '/');
    }
  }

  private record Seen(FileLook look, long sinceNs) {}

  /** Looks at all files; gives those that have settled, the oldest first. */
  List<Settled> settled() throws IOException {
    Map<Path, Seen> now = new HashMap<>();
    List<Settled> settled = new ArrayList<>();
    for (Settled file : all()) {
      Seen before = seen.get(file.path());
      if (before == null || !before.look().equals(file.look())) {
        now.put(file.path(), new Seen(file.look(), System.nanoTime()));
      } else {
        now.put(file.path(), before);
        addIfRested(settled, file, before);
      }
    }
    seen = now;
    settled.sort(
        Comparator.comparing((Settled file) -> file.look().changed()).thenComparing(Settled::path));
    return settled;
  }

  void forget(Path file) {
    seen.remove(file);
  }

  private static void addIfRested(List<Settled> settled, Settled file, Seen since) {
    long restedMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - since.sinceNs());
    if (restedMs >= UNFINISHED_MS || endsWithALine(file.path())) {
      settled.add(file);
    }
  }

  /** In UTF-16 one byte of the line's end is zero, and may be the last one. */
  private static boolean endsWithALine(Path file) {
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
      long at = bytes.length() - 1;
      int last = byteAt(bytes, at);
      return isLineEnd(last == 0 ? byteAt(bytes, at - 1) : last);
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isLineEnd(int value) {
    return value == '\n' || value == '\r';
  }

  private static int byteAt(RandomAccessFile bytes, long at) throws IOException {
    if (at < 0) {
      return -1;
    }
    bytes.seek(at);
    return bytes.read();
  }

  private List<Settled> all() throws IOException {
    List<Settled> files = new ArrayList<>();
    Files.walkFileTree(folder, new Collector(files));
    return files;
  }

  private final class Collector extends SimpleFileVisitor<Path> {
    private final List<Settled> files;

    Collector(List<Settled> files) {
      this.files = files;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
      return dir.equals(folder) || isForReadings(dir)
          ? FileVisitResult.CONTINUE
          : FileVisitResult.SKIP_SUBTREE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      // a link counts as what it leads to, and not at all while that is missing
      if (Files.isRegularFile(file) && isComplete(file.getFileName().toString())) {
        files.add(new Settled(file, FileLook.at(file)));
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException gone) {
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path dir, IOException broken) {
      return FileVisitResult.CONTINUE;
    }

    private boolean isForReadings(Path dir) {
      return !dir.getFileName().toString().startsWith(".") && !FiledFiles.holds(folder, dir);
    }
  }

  private static boolean isComplete(String fileName) {
    String name = fileName.toLowerCase(Locale.ROOT);
    return !name.startsWith(".")
        && !name.endsWith(".part")
        && !name.endsWith(".tmp")
        && !name.endsWith(FiledFiles.SUMMARY);
  }
}
