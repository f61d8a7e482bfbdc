package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.simulate.LargeFile.Form;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class LargeFileTest {
  private static final int ROWS = 35 * 2000;

  @Test
  void theLongLayoutHasAboutSixtyFiveBytesARow() throws IOException {
    String text = new String(bytes(36, 1, Form.LONG), StandardCharsets.US_ASCII);
    List<String> lines = text.lines().toList();
    assertThat(lines).hasSize(37);
    assertThat(lines.get(0))
        .isEqualTo("taken_at,line,structure,roll,sample,lane,layer,thickness_um");
    assertThat(lines.get(1))
        .matches("2026-01-05T06:00:00Z,Blown 9,BENCH-7,R000001,S0000001,1,1,1\\d\\.\\d{3}");
    assertThat(lines.get(35))
        .matches("2026-01-05T06:00:00Z,Blown 9,BENCH-7,R000001,S0000001,5,7,2\\d\\.\\d{3}");
    assertThat(lines.get(36))
        .matches("2026-01-05T06:00:10Z,Blown 9,BENCH-7,R000001,S0000002,1,1,1\\d\\.\\d{3}");
    assertThat(bytes(ROWS, 1, Form.LONG).length / (double) ROWS).isBetween(63.0, 67.0);
  }

  @Test
  void theWideLayoutHasOneColumnALayer() throws IOException {
    String text = new String(bytes(5, 1, Form.WIDE), StandardCharsets.US_ASCII);
    assertThat(text.lines().findFirst().orElseThrow())
        .endsWith(
            ",lane,layer_1_um,layer_2_um,"
                + "layer_3_um,layer_4_um,layer_5_um,layer_6_um,layer_7_um");
    assertThat(text.lines().skip(5).findFirst().orElseThrow())
        .matches("2026-01-05T06:00:00Z,Blown 9,BENCH-7,R000001,S0000001,5(,\\d+\\.\\d{3}){7}");
  }

  @Test
  void theSameSeedGivesTheSameBytesAndAnotherOneDoesNot() throws IOException {
    assertThat(bytes(5000, 3, Form.LONG)).isEqualTo(bytes(5000, 3, Form.LONG));
    assertThat(bytes(5000, 4, Form.LONG)).isNotEqualTo(bytes(5000, 3, Form.LONG));
  }

  /**
   * Mean 24 um and standard deviation 0.48 um of the seal, from a table of 4096 numbers: standard
   * errors 0.48/sqrt(4096) and 0.48/sqrt(2 x 4096), to which drawing from it adds little.
   */
  @Test
  void everyReadingCanBeReadAndLayersAreNearTheirTargets() throws IOException {
    for (Form form : Form.values()) {
      int rows = form == Form.LONG ? ROWS : ROWS / 7;
      ReadBack back = ReadBack.of(LargeFile.structure(), bytes(rows, 1, form));
      assertThat(back.counts()).isEqualTo(new Counts(rows, ROWS, 0, 0));
      double[] seal = back.samples().stream().flatMapToDouble(LargeFileTest::seal).toArray();
      assertThat(seal).hasSize(10_000);
      double mean = Arrays.stream(seal).average().orElseThrow();
      double square =
          Arrays.stream(seal).map(um -> (um - mean) * (um - mean)).average().orElseThrow();
      assertThat(mean).isCloseTo(24, within(4 * 0.48 / 64 * Math.sqrt(1 + 4096.0 / 10_000)));
      assertThat(Math.sqrt(square))
          .isCloseTo(0.48, within(4 * 0.48 / 90.5 * Math.sqrt(1 + 4096.0 / 10_000)));
    }
  }

  @Test
  void itsStructureCanBeWrittenForTheReader() {
    assertThat(LargeFile.structuresYaml()).contains("code: BENCH-7", "target: 24 um");
    assertThat(LargeFile.structure().reported()).hasSize(7);
  }

  private static DoubleStream seal(Sample sample) {
    return Arrays.stream(SeriesOf.layer(sample, 7));
  }

  private static byte[] bytes(long rows, long seed, Form form) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new LargeFile(rows, seed, form).write(out);
    return out.toByteArray();
  }
}
