package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bytes that stand for text in several ways. */
class EncodingTest {
  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
  private static final String CSV =
      "taken_at;line;structure;roll;sample;lane;layer;thickness_µm\r\n"
          + "2026-11-25T09:30Z;Anlage Süd – 2;BAR-80;Rolle €7;é\"x;3;Core µ;4,25\r\n"
          + "2026-11-25T09:30Z;Anlage Süd – 2;BAR-80;Rolle €7;\"é;y\";3;4;–\r\n";

  private static byte[] bytes(String mark, String text, Charset charset) {
    return (mark + text).getBytes(charset);
  }

  @ParameterizedTest
  @CsvSource({
    "UTF-8, false",
    "UTF-8, true",
    "UTF-16LE, true",
    "UTF-16BE, true",
    "UTF-16LE, false",
    "UTF-16BE, false",
    "windows-1252, false"
  })
  void theTextIsTheSame(String charset, boolean marked) throws Exception {
    Seen seen = Seen.in(bytes(marked ? "\ufeff" : "", CSV, Charset.forName(charset)));

    assertThat(seen.places).hasSize(2);
    Seen.Place first = seen.places.get(0);
    assertThat(first.key().line()).isEqualTo("Anlage Süd – 2");
    assertThat(first.key().roll()).isEqualTo("Rolle €7");
    assertThat(first.key().sample()).isEqualTo("é\"x");
    assertThat(first.position()).isEqualTo(4);
    assertThat(first.um()).isEqualTo(4.25);
    assertThat(seen.places.get(1).key().sample()).isEqualTo("é;y");
    assertThat(seen.places.get(1).um()).isNaN();
  }

  @Test
  void windows1252IsNoted() throws Exception {
    assertThat(Seen.in(CSV.getBytes(WINDOWS_1252)).count.notes())
        .containsExactly("the bytes are not UTF-8; the file was read as Windows-1252");
  }

  @Test
  void signsBeyondTheBasicPlaneSurviveUtf16() throws Exception {
    // 16 Ki signs are transcoded at a time: every remainder puts a surrogate pair across the cut
    for (int shift = 0; shift < 3; shift++) {
      String name = "x".repeat(shift) + "😀".repeat(20_000);
      String csv = LongLayoutTest.HEADER + LongLayoutTest.ROW.replace("S12", name);

      assertThat(Seen.in(csv.getBytes(StandardCharsets.UTF_16)).place().key().sample())
          .isEqualTo(name);
    }
  }

  @Test
  void halfASignAtTheEndOfUtf16DoesNoHarm() throws Exception {
    byte[] whole = (LongLayoutTest.HEADER + LongLayoutTest.ROW).getBytes(StandardCharsets.UTF_16LE);
    byte[] cut = Arrays.copyOf(whole, whole.length - 1);

    Seen seen = Seen.in(cut);

    assertThat(seen.count.rows()).isEqualTo(1);
  }

  @Test
  void aSignCutByTheEndOfWhatIsLookedAtIsStillUtf8() throws Exception {
    for (int shift = 0; shift < 4; shift++) {
      String csv =
          LongLayoutTest.HEADER
              + LongLayoutTest.ROW.replace("S12", "x".repeat(shift) + "漢".repeat(30_000));

      assertThat(Seen.in(csv).place().key().sample()).endsWith("漢漢").doesNotContain("æ");
    }
  }

  @Test
  void aLaterByteThatIsNotUtf8IsReadAsWindows1252AndNoted() throws Exception {
    ByteArrayOutputStream csv = new ByteArrayOutputStream();
    csv.write(LongLayoutTest.HEADER.getBytes(StandardCharsets.UTF_8));
    for (int i = 0; i < 2000; i++) {
      csv.write(LongLayoutTest.ROW.getBytes(StandardCharsets.UTF_8));
    }
    csv.write(LongLayoutTest.ROW.replace("S12", "Süd").getBytes(WINDOWS_1252));
    csv.write(LongLayoutTest.ROW.replace("S12", "Süd").getBytes(StandardCharsets.UTF_8));
    csv.write(LongLayoutTest.ROW.replace("4.25", "–").getBytes(WINDOWS_1252));

    Seen seen = Seen.in(csv.toByteArray());

    assertThat(seen.places.get(2000).key().sample()).isEqualTo("Süd");
    assertThat(seen.places.get(2001).key()).isSameAs(seen.places.get(2000).key());
    assertThat(seen.places.get(2002).um()).isNaN();
    assertThat(seen.count.notes())
        .containsExactly("some bytes are not UTF-8 as the rest is; they were read as Windows-1252");
  }

  @Test
  void utf16WithoutReadableHeaderIsRefusedAndNotGuessed() {
    assertThat(catchThrowable(() -> Seen.in(new byte[1000])))
        .isInstanceOf(FileRefused.class)
        .hasMessageContaining("is no header");
  }
}
