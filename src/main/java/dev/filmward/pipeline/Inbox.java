package dev.filmward.pipeline;

import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Sender;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Watches a folder, and folders in it, for files of readings. A file is read once nobody writes to
 * it any more ({@link WaitingFiles}), the oldest first, and then moves to {@code done} or {@code
 * refused} with a summary beside it ({@link FiledFiles}). A file that changes while it is read, or
 * after it was moved, is read again; what was known of it stays known. A file that cannot be opened
 * stays where it is and is tried again. Looks come {@value #LOOK_MS} ms apart, so that a file is on
 * the screen within two seconds.
 */
public final class Inbox implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Inbox.class);
  private static final int LOOK_MS = 400;

  /** So many failures in a row are the database's or the disk's, not the files'. */
  private static final int FAILURES_IN_A_ROW = 3;

  private final Plant plant;
  private final Path folder;
  private final WaitingFiles waiting;
  private final FiledFiles filed;
  private final Map<Path, String> troubles = new HashMap<>();
  private final ScheduledExecutorService watch =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "inbox");
            thread.setDaemon(true);
            return thread;
          });

  private Inbox(Plant plant, Path folder) {
    this.plant = plant;
    this.folder = folder;
    this.waiting = new WaitingFiles(folder);
    this.filed = new FiledFiles(plant, folder);
  }

  /** Starts watching; the folder is made where it is missing. */
  public static Inbox watch(Plant plant, Path folder) throws IOException {
    Files.createDirectories(folder);
    Inbox inbox = new Inbox(plant, folder);
    ScheduledFuture<?> unused =
        inbox.watch.scheduleWithFixedDelay(inbox::look, 0, LOOK_MS, TimeUnit.MILLISECONDS);
    return inbox;
  }

  /** Finishes the file that is being read; the others wait for the next start. */
  @Override
  public void close() {
    watch.shutdown();
    try {
      if (!watch.awaitTermination(Duration.ofSeconds(30).toSeconds(), TimeUnit.SECONDS)) {
        watch.shutdownNow();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void look() {
    try {
      Files.createDirectories(folder);
      filed.bringBackWhatChanged();
      int failures = 0;
      for (WaitingFiles.Settled file : waiting.settled()) {
        if (watch.isShutdown() || failures >= FAILURES_IN_A_ROW) {
          return;
        }
        failures = tryToRead(file) ? 0 : failures + 1;
      }
      troubles.remove(folder);
      troubles.keySet().removeIf(file -> !Files.exists(file));
    } catch (IOException | RuntimeException e) {
      warnOnce(folder, e);
    }
  }

  private boolean tryToRead(WaitingFiles.Settled file) {
    try {
      read(file);
      troubles.remove(file.path());
      return true;
    } catch (NoSuchFileException gone) {
      LOG.debug("{} was taken away before it was read", file.path());
      return true;
    } catch (IOException | RuntimeException e) {
      warnOnce(file.path(), e);
      return false;
    }
  }

  private void read(WaitingFiles.Settled file) throws IOException {
    String name = file.nameIn(folder);
    FileEntry entry;
    try (InputStream in = Files.newInputStream(file.path())) {
      entry =
          plant.read(
              new IncomingFile(name, "watch", () -> in).from(new Sender("watch folder", name)));
    }
    if (!file.look().equals(FileLook.at(file.path()))) {
      LOG.info("{} changed while it was read; it is read again", name);
      return;
    }
    waiting.forget(file.path());
    entry.refusal().ifPresent(why -> LOG.warn("{} was refused: {}", name, why));
    filed.file(file, entry);
  }

  private void warnOnce(Path what, Exception e) {
    String now = e.toString();
    if (!now.equals(troubles.put(what, now))) {
      LOG.warn("{} cannot be read; trying again: {}", what, now);
      LOG.debug("The reason", e);
    }
  }
}
