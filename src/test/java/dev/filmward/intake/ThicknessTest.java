package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How a thickness may be written, in the long layout with semicolons. */
class ThicknessTest {

  private static Seen seen(String unit, String value) throws Exception {
    return Seen.in(
        "taken_at;line;structure;roll;sample;lane;layer;thickness_"
            + unit
            + "\n2026-11-25T09:30:00Z;L1;LID-60;R7;S12;3;2;"
            + value
            + "\n");
  }

  @ParameterizedTest
  @CsvSource({
    "12.4, 12.4",
    "'12,4', 12.4",
    "12, 12",
    "+12.4, 12.4",
    "012.40, 12.4",
    "12., 12",
    ".5, 0.5",
    "',5', 0.5",
    "1.24e1, 12.4",
    "'1,24E+01', 12.4",
    "1240e-2, 12.4",
    "'1,234', 1.234",
    "  12.4 , 12.4",
    "'\"12,4\"', 12.4",
    "0.1, 0.1",
    "0.000000000000000001, 1e-18",
    "9007199254740992, 9007199254740992",
    "9007199254740993, 9007199254740992",
    "123456789012345678, 123456789012345680",
    "1234567890123456789, 1234567890123456800",
    "0.30000000000000004, 0.30000000000000004",
    "4.35, 4.35",
    "1e100, 1e100",
    "4.9e-324, 4.9e-324",
  })
  void aNumberIsTheNearestDouble(String written, double um) throws Exception {
    assertThat(seen("um", written).place().um()).isEqualTo(um);
  }

  @Test
  void randomDecimalsAreTheDoublesThatBigDecimalGives() throws Exception {
    Random random = new Random(20261125);
    StringBuilder csv =
        new StringBuilder("taken_at;line;structure;roll;sample;lane;layer;thickness_um\n");
    List<Double> expected = new ArrayList<>();
    for (int i = 0; i < 20_000; i++) {
      String digits = Long.toString(1 + (random.nextLong() >>> 1 + random.nextInt(62)));
      int point = random.nextInt(digits.length() + 1);
      String written = digits.substring(0, point) + "." + digits.substring(point);
      csv.append("2026-11-25T09:30Z;L1;LID-60;R7;S12;3;2;").append(written).append('\n');
      expected.add(new BigDecimal(written).doubleValue());
    }

    assertThat(Seen.in(csv.toString()).ums()).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "NaN", "nan", "NAN", "-", "–", "—", "\"\"", "\" - \"", " NaN "})
  void theseMeanNotMeasured(String written) throws Exception {
    Seen seen = seen("um", written);

    assertThat(seen.place().um()).isNaN();
    assertThat(seen.count.missing()).isEqualTo(1);
    assertThat(seen.count.readings()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "12,4x",
        "12.4 um",
        "1 234",
        "1'234",
        "12.4.5",
        "12,4,5",
        "--",
        "OL",
        "N/A",
        "null",
        "5%",
        "0x1p3",
        "12d",
        "12f",
        "1e",
        "e5",
        "1e5.5",
        ".",
        ",",
        "+",
        "+-1",
        "١٢",
        "12\u00a0",
        "=4",
        "12\u0000",
        "½",
        "NaN1"
      })
  void theseAreNoNumbers(String written) throws Exception {
    Seen seen = seen("um", written);

    assertThat(seen.rejection().column()).isEqualTo("thickness_um");
    assertThat(seen.rejection().value()).isEqualTo(written);
    assertThat(seen.rejection().reason()).startsWith("\"" + written + "\" is not a number");
    assertThat(seen.count.quarantined()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.234,5", "1,234.5", "1.234.567,8"})
  void thousandsSeparatorsAreNotGuessedAt(String written) throws Exception {
    assertThat(seen("um", written).rejection().reason())
        .isEqualTo(
            "\""
                + written
                + "\" is not a number; thousands separators are not read, write it like 1234.5;"
                + " leave it empty where nothing was measured");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Infinity", "inf", "-inf", "+Infinity", "∞", "1e309", "-1e999"})
  void theseAreNotFinite(String written) throws Exception {
    assertThat(seen("um", written).rejection().reason())
        .isEqualTo("\"" + written + "\" is not finite; leave it empty where nothing was measured");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "0.0", "-0", "-4.2", "-0,001", "1e-400", "000000000000000000000"})
  void theseAreNotAboveZero(String written) throws Exception {
    assertThat(seen("um", written).rejection().reason())
        .isEqualTo(
            "\"" + written + "\" is not above zero; leave it empty where nothing was measured");
  }

  @ParameterizedTest
  @CsvSource({
    "um, 12.4, 1",
    "UM, 12.4, 1",
    "µm, 12.4, 1",
    "μm, 12.4, 1",
    "mm, 0.0124, 1000",
    "mil, 0.4724, 25.4",
    "Mil, 0.488, 25.4",
    "in, 0.00048819, 25400",
  })
  void everyUnitIsMicrometresToFullPrecision(String unit, double value, double micrometres)
      throws Exception {
    // NIST SP 811, appendix B.8: 1 in = 25.4 mm, 1 mil = 0.001 in, exactly
    assertThat(seen(unit, Double.toString(value)).place().um()).isEqualTo(value * micrometres);
  }

  @Test
  void whatCouldNotBeSquaredIsTooLarge() throws Exception {
    assertThat(seen("um", "1.1e100").rejection().reason()).contains("too large for a thickness");
  }

  @Test
  void whatOverflowsInMicrometresIsNotFinite() throws Exception {
    assertThat(seen("mm", "1e308").rejection().reason()).contains("is not finite");
  }

  @Test
  void bothDecimalSignsInOneFileAreReadAndNoted() throws Exception {
    String row = "2026-11-25T09:30Z;L1;LID-60;R7;S12;3;2;";
    Seen seen =
        Seen.in(
            "taken_at;line;structure;roll;sample;lane;layer;thickness_um\n"
                + row
                + "1.5\n"
                + row
                + "1,5\n"
                + row
                + "1.234,5\n");

    assertThat(seen.ums()).containsExactly(1.5, 1.5);
    assertThat(seen.count.notes())
        .containsExactly(
            "some numbers have a decimal point and some a decimal comma; both were read");
    assertThat(seen("um", "1.5").count.notes()).isEmpty();
    assertThat(seen("um", "1,5").count.notes()).isEmpty();
  }

  @Test
  void aDecimalCommaBetweenCommasMustBeQuoted() throws Exception {
    Seen seen =
        Seen.in(
            LongLayoutTest.HEADER
                + LongLayoutTest.ROW.replace("4.25", "\"4,25\"")
                + LongLayoutTest.ROW.replace("4.25", "4,25"));

    assertThat(seen.ums()).containsExactly(4.25);
    assertThat(seen.rejection().reason()).startsWith("9 fields where the header has 8");
  }
}
