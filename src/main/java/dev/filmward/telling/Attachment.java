package dev.filmward.telling;

/** A file that goes with a message by mail. Immutable. */
public final class Attachment {
  private final String name;
  private final String mediaType;
  private final byte[] bytes;

  /**
   * @param name of the file, in one line
   */
  public Attachment(String name, String mediaType, byte[] bytes) {
    this.name = Plain.line(name);
    this.mediaType = mediaType;
    this.bytes = bytes.clone();
  }

  public String name() {
    return name;
  }

  public String mediaType() {
    return mediaType;
  }

  public byte[] bytes() {
    return bytes.clone();
  }
}
