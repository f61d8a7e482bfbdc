package dev.filmward.pipeline;

import dev.filmward.store.FileEntry;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where files go once they are read: {@code done} or {@code refused} in the inbox, each with a
 * summary in words beside it ({@code NAME.summary.txt}). A writer that had only paused may go on
 * writing to a file that was moved already; such a file comes back and is read again. For one
 * thread.
 */
final class FiledFiles {
  static final String SUMMARY = ".summary.txt";
  private static final Logger LOG = LoggerFactory.getLogger(FiledFiles.class);
  private static final Set<String> FOLDERS = Set.of("done", "refused");
  private static final Duration WATCHED_FOR = Duration.ofMinutes(10);
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(2);

  private final Plant plant;
  private final Path inbox;
  private final Map<Path, Filed> lately = new HashMap<>();
  private long lookedNs = System.nanoTime();

  FiledFiles(Plant plant, Path inbox) {
    this.plant = plant;
    this.inbox = inbox;
  }

  private record Filed(String name, FileLook look, long sinceNs) {}

  /** Whether a folder is one of those that hold what was read. */
  static boolean holds(Path inbox, Path folder) {
    return inbox.equals(folder.getParent()) && FOLDERS.contains(folder.getFileName().toString());
  }

  /** Writes the summary, then moves the file; a crash between the two has it read again. */
  void file(WaitingFiles.Settled file, FileEntry entry) throws IOException {
    String name = file.nameIn(inbox);
    String outcome = entry.refusal().isPresent() ? "refused" : "done";
    Path target = free(inbox.resolve(outcome).resolve(name));
    Files.createDirectories(target.getParent());
    Files.writeString(
        target.resolveSibling(target.getFileName() + SUMMARY),
        FileSummary.of(plant, entry),
        StandardCharsets.UTF_8);
    Files.move(file.path(), target);
    lately.put(target, new Filed(name, file.look(), System.nanoTime()));
  }

  void bringBackWhatChanged() throws IOException {
    if (System.nanoTime() - lookedNs < BETWEEN_LOOKS.toNanos()) {
      return;
    }
    lookedNs = System.nanoTime();
    Iterator<Map.Entry<Path, Filed>> entries = lately.entrySet().iterator();
    while (entries.hasNext()) {
      Map.Entry<Path, Filed> entry = entries.next();
      if (lookedNs - entry.getValue().sinceNs() > WATCHED_FOR.toNanos()
          || hasComeBack(entry.getKey(), entry.getValue())) {
        entries.remove();
      }
    }
  }

  private boolean hasComeBack(Path file, Filed filed) throws IOException {
    try {
      FileLook now = FileLook.at(file);
      if (now.size() == filed.look().size() && now.changed().equals(filed.look().changed())) {
        return false;
      }
      Path target = free(inbox.resolve(filed.name()));
      Files.createDirectories(target.getParent());
      Files.move(file, target);
      Files.deleteIfExists(file.resolveSibling(file.getFileName() + SUMMARY));
      LOG.info("{} was written to after it was read; it is read again", filed.name());
      return true;
    } catch (NoSuchFileException gone) {
      return true;
    }
  }

  /** A name that is not taken yet: {@code a.csv}, then {@code a.csv.2}, and so on. */
  private static Path free(Path wanted) {
    Path target = wanted;
    for (int i = 2; Files.exists(target); i++) {
      target = wanted.resolveSibling(wanted.getFileName() + "." + i);
    }
    return target;
  }
}
