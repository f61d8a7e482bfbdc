package dev.filmward.pipeline;

import dev.filmward.store.FileEntry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Watches a folder for files of readings. A file is read once it has kept its size and time for two
 * looks, and then moves to {@code done} or {@code refused} beside it. Looks come {@value #LOOK_MS}
 * ms apart, so that a file is on the screen within two seconds. Names that begin with a dot or end
 * in {@code .part} or {@code .tmp} are left alone: they are still being written.
 */
public final class Inbox implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Inbox.class);
  private static final int LOOK_MS = 400;

  private final Plant plant;
  private final Path folder;
  private final Map<Path, Look> looks = new HashMap<>();
  private final ScheduledExecutorService watch =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "inbox");
            thread.setDaemon(true);
            return thread;
          });

  private String trouble = "";

  private Inbox(Plant plant, Path folder) {
    this.plant = plant;
    this.folder = folder;
  }

  private record Look(long size, FileTime changed) {}

  /** Starts watching; the folder is made where it is missing. */
  public static Inbox watch(Plant plant, Path folder) throws IOException {
    Files.createDirectories(folder);
    Inbox inbox = new Inbox(plant, folder);
    ScheduledFuture<?> unused =
        inbox.watch.scheduleWithFixedDelay(inbox::look, 0, LOOK_MS, TimeUnit.MILLISECONDS);
    return inbox;
  }

  /** Finishes the file that is being read. */
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
      for (Path file : waiting()) {
        if (isSettled(file)) {
          looks.remove(file);
          read(file);
        }
      }
      trouble = "";
    } catch (IOException | RuntimeException e) {
      warnOnce(e);
    }
  }

  private void warnOnce(Exception e) {
    String now = e.toString();
    if (!now.equals(trouble)) {
      LOG.warn("The inbox {} cannot be read; trying again: {}", folder, now);
      LOG.debug("The reason", e);
      trouble = now;
    }
  }

  private List<Path> waiting() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Inbox::isReadings).sorted().toList();
    }
  }

  private static boolean isReadings(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return Files.isRegularFile(file)
        && !name.startsWith(".")
        && !name.endsWith(".part")
        && !name.endsWith(".tmp");
  }

  private boolean isSettled(Path file) throws IOException {
    Look now = new Look(Files.size(file), Files.getLastModifiedTime(file));
    return now.equals(looks.put(file, now));
  }

  private void read(Path file) throws IOException {
    String name = file.getFileName().toString();
    FileEntry entry = plant.read(new IncomingFile(name, "watch", () -> Files.newInputStream(file)));
    String outcome = entry.refusal().isPresent() ? "refused" : "done";
    entry.refusal().ifPresent(why -> LOG.warn("{} was refused: {}", name, why));
    Path target = free(Files.createDirectories(folder.resolve(outcome)), name);
    Files.move(file, target);
  }

  /** A name that is not taken yet: {@code a.csv}, then {@code a.csv.2}, and so on. */
  private static Path free(Path folder, String name) {
    Path target = folder.resolve(name);
    for (int i = 2; Files.exists(target); i++) {
      target = folder.resolve(name + "." + i);
    }
    return target;
  }
}
