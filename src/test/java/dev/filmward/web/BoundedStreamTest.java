package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.javalin.http.ContentTooLargeResponse;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** A body is counted as it streams, whatever its header says of its length. */
class BoundedStreamTest {
  private static final int LIMIT = 10_000;

  @Test
  void lessAndExactlyTheLimitPass() throws Exception {
    for (int length : new int[] {0, 1, LIMIT - 1, LIMIT}) {
      assertThat(bounded(length).readAllBytes()).hasSize(length);
    }
  }

  @Test
  void theByteAfterItIsRefusedHoweverItIsRead() {
    assertThatThrownBy(() -> bounded(LIMIT + 1).readAllBytes())
        .isInstanceOf(ContentTooLargeResponse.class)
        .hasMessageContaining("10000 bytes");
    assertThatThrownBy(
            () -> {
              try (InputStream in = bounded(LIMIT + 1)) {
                while (in.read() >= 0) {
                  // byte by byte
                }
              }
            })
        .isInstanceOf(ContentTooLargeResponse.class);
  }

  private static InputStream bounded(int length) {
    return new BoundedStream(new ByteArrayInputStream(new byte[length]), LIMIT);
  }
}
