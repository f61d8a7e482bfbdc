package dev.filmward.simulate;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How text becomes bytes, with or without a byte order mark at the start. */
enum Encoding {
  UTF_8(StandardCharsets.UTF_8, ""),
  UTF_8_MARKED(StandardCharsets.UTF_8, "\ufeff"),
  UTF_16_LITTLE_ENDIAN(StandardCharsets.UTF_16LE, "\ufeff"),
  UTF_16_BIG_ENDIAN(StandardCharsets.UTF_16BE, "\ufeff"),
  WINDOWS_1252(Charset.forName("windows-1252"), "");

  private final Charset charset;
  private final String mark;

  Encoding(Charset charset, String mark) {
    this.charset = charset;
    this.mark = mark;
  }

  Charset charset() {
    return charset;
  }

  String mark() {
    return mark;
  }
}
