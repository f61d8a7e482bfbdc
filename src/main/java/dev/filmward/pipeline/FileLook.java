package dev.filmward.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import org.jspecify.annotations.Nullable;

/**
 * What a file looks like from outside; another look means that somebody wrote to it or put another
 * file in its place.
 *
 * @param key the file's identity on its disk, where the file system has such a thing
 */
record FileLook(long size, FileTime changed, @Nullable Object key) {
  static FileLook at(Path file) throws IOException {
    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
    return new FileLook(now.size(), now.lastModifiedTime(), now.fileKey());
  }
}
