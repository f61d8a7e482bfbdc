package dev.filmward.report.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Takes the bytes of a deflated ZIP file, gives its parts in order. The workbook library writes the
 * sizes of a part behind it in the wide form, which the JDK's own reader of streams refuses; a
 * deflated part says itself where it ends. Source: APPNOTE.TXT, section 4.3.
 */
final class ZippedParts {
  private static final int LOCAL_HEADER = 0x04034b50;
  private static final int DIRECTORY_HEADER = 0x02014b50;
  private static final int HEADER_BYTES = 30;
  private static final int NAME_LENGTH_AT = 26;
  private static final int EXTRA_LENGTH_AT = 28;

  private ZippedParts() {}

  static Map<String, byte[]> of(byte[] zip) throws IOException {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    ByteBuffer bytes = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
    int at = 0;
    while (bytes.getInt(at) == LOCAL_HEADER) {
      int nameLength = bytes.getShort(at + NAME_LENGTH_AT);
      int data = at + HEADER_BYTES + nameLength + bytes.getShort(at + EXTRA_LENGTH_AT);
      String name = new String(zip, at + HEADER_BYTES, nameLength, StandardCharsets.UTF_8);
      ByteArrayOutputStream part = new ByteArrayOutputStream();
      at = next(bytes, inflated(zip, data, part));
      parts.put(name, part.toByteArray());
    }
    return parts;
  }

  /** Where the part ends. */
  private static int inflated(byte[] zip, int from, ByteArrayOutputStream into) throws IOException {
    Inflater inflater = new Inflater(true);
    try {
      inflater.setInput(zip, from, zip.length - from);
      byte[] piece = new byte[8192];
      while (!inflater.finished()) {
        int length = inflater.inflate(piece);
        if (length == 0 && inflater.needsInput()) {
          throw new IOException("the workbook ends within a part");
        }
        into.write(piece, 0, length);
      }
      return from + (int) inflater.getBytesRead();
    } catch (DataFormatException e) {
      throw new IOException("a part of the workbook is not deflated", e);
    } finally {
      inflater.end();
    }
  }

  /** Over the sizes that stand behind a part. */
  private static int next(ByteBuffer bytes, int from) {
    int at = from;
    while (bytes.getInt(at) != LOCAL_HEADER && bytes.getInt(at) != DIRECTORY_HEADER) {
      at++;
    }
    return at;
  }
}
