package dev.filmward.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Gives the text of some bytes: UTF-8, or Windows-1252 where the bytes are not UTF-8, which it then
 * remembers. One owner, one thread.
 */
final class Text {
  private final CharsetDecoder strict =
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT);
  private boolean sawOtherThanUtf8;

  String of(byte[] bytes, int start, int end) {
    for (int i = start; i < end; i++) {
      if (bytes[i] < 0) {
        return decoded(bytes, start, end);
      }
    }
    return new String(bytes, start, end - start, StandardCharsets.ISO_8859_1);
  }

  /** Whether anything had to be read as Windows-1252. */
  boolean sawOtherThanUtf8() {
    return sawOtherThanUtf8;
  }

  private String decoded(byte[] bytes, int start, int end) {
    try {
      return strict.decode(ByteBuffer.wrap(bytes, start, end - start)).toString();
    } catch (CharacterCodingException e) {
      sawOtherThanUtf8 = true;
      return new String(bytes, start, end - start, Encoding.WINDOWS_1252.charset());
    }
  }
}
