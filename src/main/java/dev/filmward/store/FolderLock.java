package dev.filmward.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Holds a data folder for this process; the system lets go of it when the process ends. */
final class FolderLock implements AutoCloseable {
  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  static FolderLock take(Path folder) {
    Path file = folder.resolve("lock");
    try {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (tryLock(channel) == null) {
        channel.close();
        throw new StoreException(
            "The data folder "
                + folder
                + " is in use by another Filmward. Stop that one, or name another folder with"
                + " --data.");
      }
      return new FolderLock(channel);
    } catch (IOException e) {
      throw new StoreException("The data folder " + folder + " cannot be written: " + e, e);
    }
  }

  private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new StoreException("The lock of the data folder cannot be released: " + e, e);
    }
  }
}
