package dev.filmward.stats;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;

/** What a step is after it was saved and a new process has read it back. */
public final class Restored {
  private Restored() {}

  @SuppressWarnings("unchecked")
  public static <T extends Serializable> T from(T step) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
        out.writeObject(step);
      }
      try (ObjectInputStream in =
          new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
        return (T) in.readObject();
      }
    } catch (IOException | ClassNotFoundException e) {
      throw new AssertionError(e);
    }
  }
}
