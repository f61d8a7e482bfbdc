package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Uploads that break off in the middle leave nothing half, neither readings nor files. */
class UploadTest {
  @TempDir private Path folder;
  private ServedPlant served;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aConnectionThatBreaksOffLeavesNothingHalf() throws Exception {
    List<Path> before = temporary();
    String csv = ServedPlant.FILM.usual(0, 20);
    for (int part = 1; part < 10; part++) {
      breakOffAfter(csv.length() * part / 10, csv);
    }
    long end = System.nanoTime() + 10_000_000_000L;
    while (!temporary().equals(before)) {
      assertThat(System.nanoTime()).as("files are left behind").isLessThan(end);
      Thread.sleep(20);
    }
    assertThat(served.api().get("/api/v1/files").json().get("files")).isEmpty();
    assertThat(served.api().get("/api/v1/board").json().get("lines")).isEmpty();
    assertThat(served.api().upload("a.csv", csv).json().get("new").asLong()).isEqualTo(200);
  }

  @Test
  void theAnswerIsTheSummary() {
    // 20 samples of two layers in five lanes, then the first sample again
    String csv = ServedPlant.FILM.usual(0, 20);
    String again = ServedPlant.FILM.usual(0, 1).substring(SmallFilm.HEADER.length());
    var answer = served.api().upload("a.csv", csv + again + "1,2,3\n");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().get("rows").asLong()).isEqualTo(106);
    assertThat(answer.json().get("readings").asLong()).isEqualTo(210);
    assertThat(answer.json().get("new").asLong()).isEqualTo(200);
    assertThat(answer.json().get("known").asLong()).isEqualTo(10);
    assertThat(answer.json().get("quarantined").asLong()).isEqualTo(2);
  }

  private void breakOffAfter(int length, String csv) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.port())) {
      OutputStream out = socket.getOutputStream();
      String head =
          "POST /api/v1/files?name=a.csv HTTP/1.1\r\nHost: localhost\r\nX-Filmward: 1\r\n"
              + "Content-Type: text/csv\r\nContent-Length: "
              + csv.length()
              + "\r\n\r\n";
      out.write(head.getBytes(StandardCharsets.US_ASCII));
      out.write(csv.substring(0, length).getBytes(StandardCharsets.UTF_8));
      out.flush();
    }
  }

  private static List<Path> temporary() throws IOException {
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("filmward-upload"))
          .sorted()
          .toList();
    }
  }
}
