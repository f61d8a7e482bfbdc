package dev.filmward.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How a file's bytes stand for text. */
public enum Encoding {
  UTF_8("UTF-8", StandardCharsets.UTF_8),
  UTF_16_LE("UTF-16 (little endian)", StandardCharsets.UTF_16LE),
  UTF_16_BE("UTF-16 (big endian)", StandardCharsets.UTF_16BE),
  WINDOWS_1252("Windows-1252", Charset.forName("windows-1252"));

  private final String words;
  private final Charset charset;

  Encoding(String words, Charset charset) {
    this.words = words;
    this.charset = charset;
  }

  public String words() {
    return words;
  }

  Charset charset() {
    return charset;
  }
}
