package dev.filmward.report;

import dev.filmward.film.Sample;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;

/**
 * SHA-256 over samples as they were charted, in the order in which they are given: names, time,
 * lanes and readings. The same data give the same digest, whatever database they lie in. For one
 * thread.
 */
final class DataDigest {
  private final MessageDigest digest;

  DataDigest() {
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Of digests, in their order. */
  static String of(List<String> digests) {
    DataDigest all = new DataDigest();
    digests.forEach(all::add);
    return all.hex();
  }

  void add(Sample sample) {
    add(sample.key().line());
    add(sample.key().structure());
    add(sample.key().roll());
    add(sample.key().sample());
    int lanes = sample.laneCount();
    ByteBuffer bytes = ByteBuffer.allocate(20 + lanes * (4 + 8 * sample.layers()));
    Instant takenAt = sample.takenAt();
    bytes.putLong(takenAt.getEpochSecond()).putInt(takenAt.getNano());
    bytes.putInt(sample.layers()).putInt(lanes);
    for (int lane = 0; lane < lanes; lane++) {
      bytes.putInt(sample.lane(lane));
      for (int position = 1; position <= sample.layers(); position++) {
        bytes.putDouble(
            sample.isMeasured(position, lane) ? sample.thicknessUm(position, lane) : Double.NaN);
      }
    }
    digest.update(bytes.array());
  }

  private void add(String name) {
    byte[] bytes = name.getBytes(StandardCharsets.UTF_8);
    digest.update(ByteBuffer.allocate(4).putInt(bytes.length).array());
    digest.update(bytes);
  }

  String hex() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
