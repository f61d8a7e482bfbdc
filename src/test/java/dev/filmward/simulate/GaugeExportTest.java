package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.simulate.CsvFormat.Numerals;
import dev.filmward.simulate.CsvFormat.Offset;
import dev.filmward.simulate.CsvFormat.Text;
import dev.filmward.simulate.CsvFormat.Times;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class GaugeExportTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final Times LOCAL = new Times(BERLIN, Offset.LEFT_OUT);
  private static final Text PLAIN = new Text(Encoding.UTF_8, LineEnd.LF, ',');
  private static final Numerals UM = new Numerals("um", 2, '.', "-");

  /** Second layer not measured in lane 2. */
  private static final Sample SAMPLE =
      new Sample(
          new SampleKey("Cast 7", "TWO-50", "R01", "S001"),
          Instant.parse("2026-11-02T07:00:00Z"),
          new int[] {1, 2},
          new double[][] {{15.25, 15}, {36.1, Double.NaN}});

  @Test
  void theLongLayoutHasOneReadingARow() throws IOException {
    assertThat(text(new CsvFormat(Layout.LONG_BY_POSITION, LOCAL, PLAIN, UM), Map.of()))
        .isEqualTo(
            """
            taken_at,line,structure,roll,sample,lane,layer,thickness_um
            2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,1,1,15.25
            2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,1,2,36.10
            2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,2,1,15.00
            2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,2,2,-
            """);
  }

  /** 15.25 / 25.4 = 0.60039, 36.1 / 25.4 = 1.42126 and 15 / 25.4 = 0.59055 mil. */
  @Test
  void theWideLayoutHasOneColumnALayer() throws IOException {
    CsvFormat format =
        new CsvFormat(
            Layout.WIDE_BY_POSITION,
            new Times(BERLIN, Offset.WRITTEN),
            new Text(Encoding.UTF_8, LineEnd.CRLF, '\t'),
            new Numerals("mil", 5, '.', ""));
    assertThat(text(format, Map.of()))
        .isEqualTo(
            "taken_at\tline\tstructure\troll\tsample\tlane\tlayer_1_mil\tlayer_2_mil\r\n"
                + "2026-11-02T08:00:00+01:00\tCast 7\tTWO-50\tR01\tS001\t1\t0.60039\t1.42126\r\n"
                + "2026-11-02T08:00:00+01:00\tCast 7\tTWO-50\tR01\tS001\t2\t0.59055\t\r\n");
  }

  @Test
  void layersMayGoByNameAndNumbersMayHaveCommas() throws IOException {
    CsvFormat format =
        new CsvFormat(
            Layout.WIDE_BY_NAME,
            LOCAL,
            new Text(Encoding.UTF_8, LineEnd.LF, ';'),
            new Numerals("mm", 5, ',', "NaN"));
    assertThat(text(format, Map.of()).lines())
        .containsExactly(
            "taken_at;line;structure;roll;sample;lane;Skin + Tie (mm);Core + Seal (mm)",
            "2026-11-02T08:00:00;Cast 7;TWO-50;R01;S001;1;0,01525;0,03610",
            "2026-11-02T08:00:00;Cast 7;TWO-50;R01;S001;2;0,01500;NaN");
  }

  @Test
  void theMicroSignIsWrittenInTheEncodingAsked() throws IOException {
    assertThat(bytes(Encoding.UTF_8)).startsWith('t', 'a').containsSequence(0xC2, 0xB5, 'm');
    assertThat(bytes(Encoding.UTF_8_MARKED)).startsWith(0xEF, 0xBB, 0xBF, 't');
    assertThat(bytes(Encoding.WINDOWS_1252)).startsWith('t', 'a').containsSequence('_', 0xB5, 'm');
    assertThat(bytes(Encoding.UTF_16_LITTLE_ENDIAN))
        .startsWith(0xFF, 0xFE, 't', 0)
        .containsSequence(0xB5, 0, 'm', 0);
    assertThat(bytes(Encoding.UTF_16_BIG_ENDIAN))
        .startsWith(0xFE, 0xFF, 0, 't')
        .containsSequence(0, 0xB5, 0, 'm');
  }

  @Test
  void fieldsThatCouldBeMisreadAreQuoted() throws IOException {
    Sample odd =
        new Sample(
            new SampleKey("Cast \"7\"", "TWO-50", "R,01", "S001"),
            SAMPLE.takenAt(),
            new int[] {1},
            new double[][] {{15}, {36}});
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CsvFormat format = new CsvFormat(Layout.WIDE_BY_POSITION, LOCAL, PLAIN, UM);
    new GaugeExport(TwoLayers.STRUCTURE, format, Map.of()).write(List.of(odd), out);
    assertThat(out.toString(StandardCharsets.UTF_8))
        .endsWith("\n2026-11-02T08:00:00,\"Cast \"\"7\"\"\",TWO-50,\"R,01\",S001,1,15.00,36.00\n");
  }

  @Test
  void chosenRowsOfTheLongLayoutAreSpoiledAndCounted() throws IOException {
    CsvFormat format = new CsvFormat(Layout.LONG_BY_NAME, LOCAL, PLAIN, UM);
    Map<Integer, Fault> faults =
        Map.of(1, Fault.BAD_NUMBER, 2, Fault.BAD_LANE, 3, Fault.UNKNOWN_LAYER);
    assertThat(text(format, faults).lines().skip(1))
        .containsExactly(
            "2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,1,Skin + Tie,15.25?",
            "2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,edge,Core + Seal,36.10",
            "2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,2,Overlay,15.00",
            "2026-11-02T08:00:00,Cast 7,TWO-50,R01,S001,2,Core + Seal,-");
    assertThat(counts(format, faults)).isEqualTo(new Counts(4, 0, 1, 3));
    assertThat(counts(format, Map.of(4, Fault.TOO_FEW_FIELDS))).isEqualTo(new Counts(4, 3, 0, 1));
  }

  @Test
  void inTheWideLayoutABadNumberCostsOneReadingAndABadRowAll() throws IOException {
    CsvFormat format = new CsvFormat(Layout.WIDE_BY_NAME, LOCAL, PLAIN, UM);
    assertThat(counts(format, Map.of(2, Fault.BAD_NUMBER))).isEqualTo(new Counts(2, 2, 1, 1));
    assertThat(counts(format, Map.of(2, Fault.TOO_FEW_FIELDS))).isEqualTo(new Counts(2, 2, 0, 2));
    assertThat(text(format, Map.of(1, Fault.BAD_NUMBER))).contains(",1,15.25?,36.10\n");
    assertThatThrownBy(() -> text(format, Map.of(1, Fault.UNKNOWN_LAYER)))
        .hasMessageContaining("does not name its layers");
  }

  @Test
  void aFormatThatNobodyCouldReadIsRefused() {
    assertThatThrownBy(
            () -> new CsvFormat(Layout.LONG_BY_NAME, LOCAL, PLAIN, new Numerals("um", 2, ',', "-")))
        .hasMessageContaining("cannot also separate fields");
    assertThatThrownBy(() -> new Numerals("furlong", 2, '.', "-")).hasMessageContaining("furlong");
  }

  private static int[] bytes(Encoding encoding) throws IOException {
    CsvFormat format =
        new CsvFormat(
            Layout.LONG_BY_POSITION,
            LOCAL,
            new Text(encoding, LineEnd.LF, ','),
            new Numerals("\u00b5m", 2, '.', "-"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new GaugeExport(TwoLayers.STRUCTURE, format, Map.of()).write(List.of(SAMPLE), out);
    byte[] bytes = out.toByteArray();
    int[] unsigned = new int[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      unsigned[i] = bytes[i] & 0xFF;
    }
    return unsigned;
  }

  private static String text(CsvFormat format, Map<Integer, Fault> faults) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new GaugeExport(TwoLayers.STRUCTURE, format, faults).write(List.of(SAMPLE), out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static Counts counts(CsvFormat format, Map<Integer, Fault> faults) throws IOException {
    return new GaugeExport(TwoLayers.STRUCTURE, format, faults)
        .write(List.of(SAMPLE), new ByteArrayOutputStream());
  }
}
