package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.filmward.film.LengthUnit;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What a header says of the file, and when a file is refused for it. */
class HeaderTest {
  private static final String HEAD = "taken_at,line,structure,roll,sample,lane";

  private static Dialect dialect(String header) throws Exception {
    return FilePreview.of(
            new ByteArrayInputStream(header.getBytes(StandardCharsets.UTF_8)),
            "readings.csv",
            Film.BOTH,
            Seen.PLANT,
            0)
        .dialect();
  }

  private static String refusal(String csv) {
    FileRefused refused = catchThrowableOfType(FileRefused.class, () -> Seen.in(csv));
    return refused.getMessage();
  }

  @Test
  void theDialectIsGivenInWords() throws Exception {
    assertThat(dialect(HEAD + ",layer,thickness_um").describe())
        .isEqualTo("UTF-8, fields separated by commas, one reading a row, thickness in um");
    assertThat(dialect((HEAD + ",layer_1_um,layer_2_mil,layer_3_um").replace(',', ';')).describe())
        .isEqualTo(
            "UTF-8, fields separated by semicolons, one lane of a sample a row, with a column for"
                + " each layer, thickness in um and mil");
  }

  @ParameterizedTest
  @CsvSource({"',', COMMA", "';', SEMICOLON", "'\t', TAB"})
  void theSeparatorIsTakenFromTheHeader(String sign, Separator separator) throws Exception {
    Dialect dialect = dialect((HEAD + ",layer,thickness_um").replace(",", sign));

    assertThat(dialect.separator()).isEqualTo(separator);
    assertThat(dialect.columns()).hasSize(8);
  }

  @Test
  void otherSeparatorsWithinHeadingsDoNoHarm() throws Exception {
    Dialect dialect = dialect((HEAD + ",layer,thickness_um").replace(',', ';') + ";a,b,c;\"d;e\"");

    assertThat(dialect.columns())
        .extracting(Column::heading)
        .endsWith("thickness_um", "a,b,c", "d;e");
    assertThat(dialect.ignoredColumns()).hasSize(2);
  }

  @Test
  void aQuotedHeadingMayHoldQuotes() throws Exception {
    Dialect dialect = dialect(HEAD + ",layer,thickness_um,\"say \"\"a, b\"\"\",c");

    assertThat(dialect.columns()).extracting(Column::heading).endsWith("say \"a, b\"", "c");
  }

  @ParameterizedTest
  @CsvSource({
    "thickness_um, UM",
    "THICKNESS_MIL, MIL",
    "thickness_in, IN",
    "thickness_mm, MM",
    "thickness_µm, UM",
    "Thickness_μm, UM",
    "thickness [um], UM",
    "Thickness (mil), MIL",
  })
  void theUnitIsTakenFromTheHeading(String heading, LengthUnit unit) throws Exception {
    Column column = dialect(HEAD + ",layer," + heading).columns().get(7);

    assertThat(column.field()).isEqualTo(Field.THICKNESS);
    assertThat(column.unit()).contains(unit);
  }

  @ParameterizedTest
  @CsvSource({
    "layer_1_um, 1, , UM",
    "LAYER_02_µm, 2, , UM",
    "layer_4096_mil, 4096, , MIL",
    "layer_3 [mm], 3, , MM",
    "Barrier [um], , Barrier, UM",
    "barrier(MIL), , barrier, MIL",
    "Outer skin + Tie  ( µm ), , Outer skin + Tie, UM",
    "Core µ [um], , Core µ, UM",
  })
  void aLayerColumnIsHeadedByPositionOrName(
      String heading, Integer position, String layer, LengthUnit unit) throws Exception {
    Dialect dialect = dialect(HEAD + "," + heading);
    Column column = dialect.columns().get(6);

    assertThat(dialect.layout()).isEqualTo(Layout.WIDE);
    assertThat(column.field()).isEqualTo(Field.LAYER_THICKNESS);
    assertThat(column.unit()).contains(unit);
    assertThat(column.position().isPresent()).isEqualTo(position != null);
    assertThat(column.position().orElse(-1)).isEqualTo(position == null ? -1 : position);
    assertThat(column.layer().orElse(null)).isEqualTo(layer);
  }

  @Test
  void aLayerOrThicknessColumnMakesTheFileLong() throws Exception {
    Dialect dialect = dialect(HEAD + ",layer,thickness_um,layer_1_um,Barrier [um],thickness_note");

    assertThat(dialect.layout()).isEqualTo(Layout.LONG);
    assertThat(dialect.ignoredColumns())
        .extracting(Column::heading)
        .containsExactly("layer_1_um", "Barrier [um]", "thickness_note");
  }

  @Test
  void lengthsThatAreNoLayersAreIgnored() throws Exception {
    Dialect dialect =
        dialect(
            HEAD + ",layer_1_um,Lay-flat width [mm],Peel force [N],layer speed,thickness_total_um");

    assertThat(dialect.layout()).isEqualTo(Layout.WIDE);
    assertThat(dialect.layerColumns()).extracting(Column::number).containsExactly(7);
  }

  static Stream<Arguments> refusals() {
    String expected =
        "the first line must name the columns: taken_at,line,structure,roll,sample,lane, then"
            + " layer,thickness_um (one reading a row) or layer_1_um,layer_2_um and so on (a"
            + " column for each layer)";
    String noUnit =
        " does not say its unit; write um, µm, mm, mil or in, as in thickness_um, layer_1_um or"
            + " Barrier [um]";
    return Stream.of(
        refused("", "readings.csv is empty; " + expected),
        refused(" \n\t\n\r\n", "readings.csv is empty; " + expected),
        refused("a,b,c\n1,2,3", "readings.csv, line 1: \"a,b,c\" is no header; " + expected),
        refused("\n\n1;2;3", "readings.csv, line 3: \"1;2;3\" is no header; " + expected),
        refused(
            "PK\u0003\u0004\u0014",
            "readings.csv is a spreadsheet workbook or an archive; save the sheet as CSV"),
        refused(
            HEAD.replace(",lane", "") + ",layer,thickness_um",
            "readings.csv, line 1: the column \"lane\" is missing"),
        refused(
            HEAD.replace("taken_at", "takenat") + ",layer,thickness_um",
            "readings.csv, line 1: the column \"taken_at\" is missing;"
                + " the nearest heading is \"takenat\""),
        refused(HEAD + ",thickness_um", "readings.csv, line 1: the column \"layer\" is missing"),
        refused("taken_at", "readings.csv, line 1: the column \"line\" is missing"),
        refused(
            HEAD + ",layer",
            "readings.csv, line 1: the thickness column is missing;"
                + " head it thickness_um, or with another unit"),
        refused(
            HEAD,
            "readings.csv, line 1: no column holds a thickness; head it thickness_um, or head a"
                + " column for each layer layer_1_um, layer_2_um and so on, or with the layer's"
                + " name and the unit in brackets"),
        refused(HEAD + ",layer,thickness", "readings.csv, line 1: \"thickness\"" + noUnit),
        refused(HEAD + ",layer,thickness []", "readings.csv, line 1: \"thickness []\"" + noUnit),
        refused(
            HEAD + ",layer,thickness_furlong",
            "readings.csv, line 1: the thickness column is missing;"
                + " head it thickness_um, or with another unit"),
        refused(HEAD + ",layer_1_um,layer_2", "readings.csv, line 1: \"layer_2\"" + noUnit),
        refused(HEAD + ",layer_1_foot", "readings.csv, line 1: \"layer_1_foot\"" + noUnit),
        refused(HEAD + ",Barrier", "readings.csv, line 1: \"Barrier\"" + noUnit),
        refused(HEAD + ",barrier [N]", "readings.csv, line 1: \"barrier [N]\"" + noUnit),
        refused(
            HEAD + ",layer_0_um",
            "readings.csv, line 1: \"layer_0_um\" is no layer; layers are numbered from 1, the outer"
                + " face inwards"),
        refused(
            HEAD + ",layer_99999999999999999999_um",
            "readings.csv, line 1: \"layer_99999999999999999999_um\" is no layer; layers are"
                + " numbered from 1, the outer face inwards"),
        refused(
            HEAD + ",Barrier [um],Barier [um]",
            "readings.csv, line 1: \"Barier [um]\" names no known layer;"
                + " the nearest is \"Barrier\""),
        refused(
            HEAD + ",Outer skin [um]",
            "readings.csv, line 1: \"Outer skin [um]\" is a layer that no known structure reports by"
                + " itself; head the column with the reported layer: \"Outer skin + Tie\","
                + " \"Barrier\", \"Inner tie + Seal\", \"Skin\", \"Tie\", \"Core µ\", \"Seal\""),
        refused(
            HEAD + ",Barrier [um],layer_1_um",
            "readings.csv, line 1: some layer columns are headed by position and some by name;"
                + " head all of them the same way"),
        refused(
            HEAD + ",layer_1_um,layer_01_mil",
            "readings.csv, line 1: two columns are of \"layer 1\"; leave one of them out"),
        refused(
            HEAD + ",Barrier [um],barrier [mm]",
            "readings.csv, line 1: two columns are of \"barrier\"; leave one of them out"),
        refused(
            HEAD + ",layer,thickness_um,Lane",
            "readings.csv, line 1: columns 6 and 9 are both headed \"lane\";"
                + " leave one of them out"),
        refused(
            HEAD + ",layer,thickness_um,thickness_mil",
            "readings.csv, line 1: \"thickness_um\" and \"thickness_mil\" are both thicknesses;"
                + " leave one of them out"),
        refused(
            "taken_at,line,structure;roll;sample;lane,layer;thickness_um",
            "readings.csv, line 1: semicolons and commas both seem to separate the columns;"
                + " use one of them only"),
        refused(
            HEAD + ",layer,thickness_um" + ",x".repeat(4089),
            "readings.csv, line 1: 4097 columns; at most 4096 are read"),
        refused(
            HEAD + ",layer,thickness_um" + ",x".repeat(1_000_000),
            "readings.csv, line 1: longer than 1 MiB, so no header; " + expected));
  }

  private static Arguments refused(String csv, String message) {
    return Arguments.of(csv.length() > 200 ? csv.length() + " signs" : csv, csv, message);
  }

  @ParameterizedTest(name = "[{index}] {0}")
  @MethodSource("refusals")
  void aFileIsRefusedWithWhereWhatAndWhatInstead(String shown, String csv, String message) {
    assertThat(refusal(csv)).isEqualTo(message);
  }

  @Test
  void anUnusableHeadingIsCutInTheMessage() {
    assertThat(refusal("x".repeat(900_000))).hasSizeLessThan(600).contains("xxx…\" is no header");
  }

  @Test
  void nothingIsDeliveredOfARefusedFile() {
    Seen seen = new Seen();
    String csv = HEAD + ",layer,thickness\n" + LongLayoutTest.ROW + "x\n";

    catchThrowableOfType(
        FileRefused.class,
        () ->
            new ReadingsParser(Film.BOTH, Seen.PLANT)
                .parse(
                    new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
                    "readings.csv",
                    seen,
                    seen.rejections::add));

    assertThat(seen.events).isEmpty();
    assertThat(seen.rejections).isEmpty();
  }

  @Test
  void fourThousandAndNinetySixColumnsAreRead() throws Exception {
    String header = HEAD + ",layer,thickness_um" + ",x".repeat(4088);

    Seen seen = Seen.in(header + "\n" + LongLayoutTest.ROW.strip() + ",".repeat(4088) + "\n");

    assertThat(seen.place().um()).isEqualTo(4.25);
  }
}
