package dev.filmward.report.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Size;
import dev.filmward.report.ReportJson;
import dev.filmward.report.Verdict;
import dev.filmward.report.WeeklyReport;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** The three forms of a report, read back by other hands, say what its JSON says. */
class PaperFormTest {
  private static final Issue USUAL = SampleReports.draft(SampleReports.usual());
  private static final String LONG = "N".repeat(300);
  private static final String HOSTILE = "<script>alert(1)</script> & \"quoted\" 'single'";
  private static final String HEBREW = "\u05e9\u05dc\u05d5\u05dd";

  @TempDir Path folder;

  /** Figures as the JSON has them, rounded here and not by the forms. */
  private static List<String> figures(Issue issue, char decimalSign) throws IOException {
    JsonNode report = new ObjectMapper().readTree(ReportJson.write(issue.report()));
    List<String> figures = new ArrayList<>();
    for (JsonNode film : report.get("films")) {
      for (JsonNode each : film.get("characteristics")) {
        double factor = each.get("kind").asText().equals("SHARE") ? 100 : 1;
        add(figures, each.get("mean"), factor, 2);
        add(figures, each.get("sigmaOverall"), factor, 3);
        add(figures, each.get("individual").get("target"), factor, 2);
        for (String index : List.of("cp", "cpk", "pp", "ppk", "atLeast")) {
          JsonNode value = each.get("index").get(index);
          double found = value.asDouble();
          boolean isJustBelow = value.isNumber() && found < 1.33 && found >= 1.325;
          add(figures, value, 1, isJustBelow ? 3 : 2);
        }
        add(figures, each.get("observedPpm"), 1, 0);
        add(figures, each.get("expectedPpm"), 1, 0);
      }
    }
    assertThat(figures).hasSizeGreaterThan(80);
    return figures.stream().map(figure -> figure.replace('.', decimalSign)).toList();
  }

  private static void add(List<String> figures, JsonNode value, double factor, int decimals) {
    if (value.isNumber()) {
      figures.add(
          new BigDecimal(value.asDouble() * factor)
              .setScale(decimals, RoundingMode.HALF_UP)
              .toPlainString());
    }
  }

  @Test
  void thePdfHasTheFiguresOfTheJson() throws IOException {
    String english = Papers.text(Papers.pdf(USUAL, "en"));
    assertThat(figures(USUAL, '.'))
        .allSatisfy(figure -> assertThat(english).contains(" " + figure));
    String german = Papers.text(Papers.pdf(USUAL, "de"));
    assertThat(figures(USUAL, ',')).allSatisfy(figure -> assertThat(german).contains(" " + figure));
    assertThat(german)
        .contains("Fähigkeitsbericht", "nicht stabil", "Mehrverbrauch", "Eingriffsgrenzen")
        .doesNotContain("Capability report", "not stable");
  }

  /** By poppler, where it is installed: a reader that shares no code with the writer. */
  @Test
  void anotherReaderFindsTheSameFiguresInThePdf() throws IOException, InterruptedException {
    Path pdf = folder.resolve("report.pdf");
    Files.write(pdf, Papers.pdf(USUAL, "en"));
    Path text = folder.resolve("report.txt");
    boolean isThere = Files.isExecutable(Path.of("/usr/bin/pdftotext"));
    assumeTrue(
        isThere, "pdftotext (poppler-utils) is not installed: the PDF is read by PDFBox only");
    Process process =
        new ProcessBuilder("/usr/bin/pdftotext", "-layout", pdf.toString(), text.toString())
            .start();
    assertThat(process.waitFor()).isZero();
    String read = Papers.plain(Files.readString(text));
    assertThat(figures(USUAL, '.')).allSatisfy(figure -> assertThat(read).contains(" " + figure));
  }

  @Test
  void thePageHasTheFiguresOfTheJsonAndNeedsNothingFromOutside() throws Exception {
    String html = Papers.html(USUAL, "en");
    Document document = parsed(html);
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < document.getElementsByTagName("td").getLength(); i++) {
      cells.add(document.getElementsByTagName("td").item(i).getTextContent());
    }
    assertThat(cells).containsAll(figures(USUAL, '.'));
    String outside =
        html.replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", "");
    assertThat(outside).doesNotContain("http:", "https:", "src=", "<link", "<script", "@import");
    assertThat(outside.replaceAll("url\\((data:|#)", "")).doesNotContain("url(");
    assertThat(document.getDocumentElement().getAttribute("lang")).isEqualTo("en");
    List<String> ids = new ArrayList<>();
    Pattern.compile(" id=\"([^\"]+)\"")
        .matcher(html)
        .results()
        .forEach(found -> ids.add(found.group(1)));
    assertThat(ids).doesNotHaveDuplicates();
  }

  /** In full: to the last bit of what the JSON has. */
  @Test
  void theWorkbookHasTheFiguresOfTheJsonInFull() throws IOException {
    byte[] book = Papers.written(PaperForm.SPREADSHEET, USUAL, "en", Size.A4);
    List<List<String>> rows = Papers.sheet(book, "Indices");
    List<String> head = rows.get(0);
    assertThat(head).startsWith("Line", "Structure", "Layer");
    JsonNode films = new ObjectMapper().readTree(ReportJson.write(USUAL.report())).get("films");
    int row = 1;
    for (JsonNode film : films) {
      for (JsonNode each : film.get("characteristics")) {
        JsonNode ppk = each.get("index").get("ppk");
        if (each.get("kind").asText().equals("SHARE")) {
          continue;
        }
        List<String> cells = rows.get(row++);
        assertThat(cells.get(0)).isEqualTo(film.get("line").asText());
        assertThat(cells.get(head.indexOf("Ppk")))
            .isEqualTo(ppk.isNull() ? "–" : String.valueOf(ppk.asDouble()));
      }
    }
    List<List<String>> points = Papers.sheet(book, "Samples");
    int charted =
        USUAL.report().films().stream()
            .flatMap(film -> film.characteristics().stream())
            .mapToInt(each -> each.chart().size())
            .sum();
    assertThat(points).hasSize(charted + 1);
    double mean =
        USUAL.report().films().get(0).characteristics().get(0).chart().get(0).mean().getAsDouble();
    assertThat(Double.parseDouble(points.get(1).get(6))).isCloseTo(mean, within(0.0));
    assertThat(
            Papers.sheet(Papers.written(PaperForm.SPREADSHEET, USUAL, "de", Size.A4), "Kennwerte"))
        .hasSize(rows.size());
  }

  @Test
  void theSameReportGivesTheSameBytes() throws IOException {
    for (PaperForm form : PaperForm.values()) {
      assertThat(Papers.written(form, USUAL, "de", Size.LETTER))
          .as(form.name())
          .isEqualTo(
              Papers.written(form, SampleReports.draft(SampleReports.usual()), "de", Size.LETTER));
    }
  }

  @Test
  void allFontsAreEmbedded() throws IOException {
    try (PDDocument document = Loader.loadPDF(Papers.pdf(hostile(), "de"))) {
      List<String> names = new ArrayList<>();
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).isEmbedded()).as(name.getName()).isTrue();
          names.add(page.getResources().getFont(name).getName().replaceAll("^[A-Z]+\\+", ""));
        }
      }
      assertThat(names).contains("FilmwardPaper-Regular", "FilmwardPaper-Bold", "DejaVuSans");
    }
  }

  @Test
  void everyPageHasItsNumberAndPapersHaveTheirSizes() throws IOException {
    List<String> pages = Papers.pages(Papers.pdf(USUAL, "en"));
    for (int i = 0; i < pages.size(); i++) {
      assertThat(pages.get(i)).contains((i + 1) + " / " + pages.size());
      assertThat(pages.get(i)).contains("Capability report 2026-W47").contains("Draft, not issued");
    }
    assertThat(pages.size()).isBetween(8, 16);
    try (PDDocument a4 = Loader.loadPDF(Papers.pdf(USUAL, "en"));
        PDDocument letter =
            Loader.loadPDF(Papers.written(PaperForm.PDF, USUAL, "en", Size.LETTER))) {
      assertThat(a4.getPage(0).getMediaBox().getWidth()).isCloseTo(595.28f, within(0.5f));
      assertThat(a4.getPage(0).getMediaBox().getHeight()).isCloseTo(841.89f, within(0.5f));
      assertThat(letter.getPage(0).getMediaBox().getWidth()).isCloseTo(612f, within(0.5f));
      assertThat(letter.getPage(0).getMediaBox().getHeight()).isCloseTo(792f, within(0.5f));
    }
  }

  /**
   * What PDF/UA asks for and a program can see: marked, a language, a title, tags, alternatives.
   */
  @Test
  void thePdfIsTaggedForReadersOfTheScreen() throws IOException {
    try (PDDocument document = Loader.loadPDF(Papers.pdf(USUAL, "de"))) {
      assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("de");
      assertThat(document.getDocumentInformation().getTitle()).contains("2026-W47");
      String metadata =
          new String(
              document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
      assertThat(metadata).contains("<pdfuaid:part>1</pdfuaid:part>");
      List<PDStructureElement> elements = new ArrayList<>();
      collect(document.getDocumentCatalog().getStructureTreeRoot(), elements);
      List<String> types = elements.stream().map(PDStructureElement::getStructureType).toList();
      assertThat(types).contains("H1", "H2", "P", "Table", "TH", "TD", "L", "Figure");
      assertThat(elements.stream().filter(each -> each.getStructureType().equals("Figure")))
          .hasSizeGreaterThan(20)
          .allSatisfy(figure -> assertThat(figure.getAlternateDescription()).isNotBlank());
      assertThat(document.getDocumentCatalog().getDocumentOutline().children())
          .extracting(item -> item.getTitle())
          .contains("Line 1 · LID-60", "Line 2 · POUCH-90", "Verfahren");
    }
  }

  private static void collect(PDStructureNode node, List<PDStructureElement> into) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        into.add(element);
        collect(element, into);
      }
    }
  }

  private static Issue hostile() {
    CharacteristicWeek layer = SampleReports.characteristic(1, HOSTILE, 14, true);
    CharacteristicWeek named = SampleReports.characteristic(2, LONG, 3, true);
    CharacteristicWeek other = SampleReports.characteristic(3, "🙂 中 " + HEBREW, 5, false);
    FilmWeek film =
        SampleReports.film("=1+1", HOSTILE, Verdict.NOT_STABLE, List.of(layer, named, other));
    return SampleReports.draft(SampleReports.of(film));
  }

  /** A name is text wherever it stands, whole where its row is, and never wider than the page. */
  @Test
  void hostileNamesNeitherBreakTheLayoutNorGetLost() throws Exception {
    byte[] pdf = Papers.pdf(hostile(), "en");
    String text = Papers.text(pdf);
    assertThat(text).contains("<script>alert(1)</script>");
    assertThat(text.replace(" ", "")).contains(LONG);
    assertThat(text).contains("[U+4E2D]").contains("[U+1F642]").contains(HEBREW);
    assertNothingIsBesideThePage(pdf);
    String html = Papers.html(hostile(), "en");
    assertThat(html).doesNotContain("<script");
    assertThat(parsed(html).getDocumentElement().getTextContent())
        .contains(HOSTILE, LONG, "🙂 中 " + HEBREW);
    byte[] book = Papers.written(PaperForm.SPREADSHEET, hostile(), "en", Size.A4);
    assertThat(Papers.sheet(book, "Indices").get(1)).startsWith("=1+1", HOSTILE, HOSTILE);
    assertThat(Papers.sheet(book, "Indices").get(2).get(2)).isEqualTo(LONG);
  }

  private static void assertNothingIsBesideThePage(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<Float> ends = new ArrayList<>();
      new org.apache.pdfbox.text.PDFTextStripper() {
        @Override
        protected void processTextPosition(org.apache.pdfbox.text.TextPosition position) {
          ends.add(position.getX() + position.getWidth());
        }
      }.getText(document);
      float width = document.getPage(0).getMediaBox().getWidth();
      assertThat(ends).isNotEmpty().allSatisfy(end -> assertThat(end).isBetween(0f, width - 30));
    }
  }

  @Test
  void aWeekWithoutFilmSaysSo() throws IOException {
    Issue empty = SampleReports.draft(SampleReports.of());
    assertThat(Papers.text(Papers.pdf(empty, "en"))).contains("No film was measured in this week");
    assertThat(Papers.text(Papers.pdf(empty, "de"))).contains("keine Folie gemessen");
    assertThat(Papers.html(empty, "en")).contains("No film was measured");
    assertThat(Papers.sheet(Papers.written(PaperForm.SPREADSHEET, empty, "en", Size.A4), "About"))
        .isNotEmpty();
  }

  @Test
  void fortyFilmsAreAllThere() throws IOException {
    FilmWeek[] films =
        IntStream.rangeClosed(1, 40)
            .mapToObj(
                i ->
                    SampleReports.film(
                        "Line " + i,
                        "FILM-" + i,
                        Verdict.CAPABLE,
                        List.of(SampleReports.characteristic(1, "Skin", 20 + i, true))))
            .toArray(FilmWeek[]::new);
    Issue issue = SampleReports.draft(SampleReports.of(films));
    byte[] pdf = Papers.pdf(issue, "en");
    String text = Papers.text(pdf);
    assertThat(text).contains("40 of 40 films");
    for (int i = 1; i <= 40; i++) {
      assertThat(text).contains("Line " + i + " · FILM-" + i);
    }
    assertThat(pdf.length).isLessThan(8_000_000);
    assertThat(Papers.sheet(Papers.written(PaperForm.SPREADSHEET, issue, "en", Size.A4), "Films"))
        .hasSize(41);
  }

  @Test
  void aCustomerGetsNoCostsAndNoNames() throws IOException {
    WeeklyReport report = SampleReports.usual().forCustomer();
    Issue issue = SampleReports.issued(report);
    String text = Papers.text(Papers.pdf(issue, "en"));
    String html = Papers.html(issue, "en").replaceAll("(?s)<style>.*?</style>", "");
    assertThat(text).contains("Customer edition").contains("Revision 2");
    for (String form : List.of(text, html)) {
      assertThat(form)
          .doesNotContain(SampleReports.PERSON, "EUR", "Giveaway in", "Cost of giveaway");
    }
    byte[] book = Papers.written(PaperForm.SPREADSHEET, issue, "en", Size.A4);
    String parts = new String(joined(book), StandardCharsets.UTF_8);
    assertThat(parts).contains("LID-60").doesNotContain(SampleReports.PERSON, "EUR");
    assertThat(Papers.text(Papers.pdf(SampleReports.issued(SampleReports.usual()), "en")))
        .contains(SampleReports.PERSON, "EUR", "Internal edition");
  }

  private static byte[] joined(byte[] book) throws IOException {
    java.io.ByteArrayOutputStream all = new java.io.ByteArrayOutputStream();
    try (java.util.zip.ZipInputStream zip =
        new java.util.zip.ZipInputStream(new ByteArrayInputStream(book))) {
      while (zip.getNextEntry() != null) {
        zip.transferTo(all);
      }
    }
    return all.toByteArray();
  }

  @Test
  void anUnstableProcessHasNoCapabilityAndTheReportSaysSoInWords() throws IOException {
    Issue unstable =
        SampleReports.draft(
            SampleReports.of(
                SampleReports.film(
                    "Line 1",
                    "LID-60",
                    Verdict.NOT_STABLE,
                    List.of(SampleReports.characteristic(1, "Skin", 14, false)))));
    List<String> row =
        Papers.sheet(Papers.written(PaperForm.SPREADSHEET, unstable, "en", Size.A4), "Indices")
            .get(1);
    assertThat(row.subList(3, 6)).containsExactly("Performance only: not stable", "–", "–");
    assertThat(Papers.text(Papers.pdf(unstable, "en")))
        .contains("Skin: 23 of 336 samples signalled")
        .contains("Only performance can be told, no capability");
  }

  @Test
  void aRevisionSaysWhatItChangedAndWhoStandsForIt() throws IOException {
    String german = Papers.text(Papers.pdf(SampleReports.issued(SampleReports.usual()), "de"));
    assertThat(german)
        .contains("Ausgegeben, Revision 2", "Freigegeben von " + SampleReports.PERSON)
        .contains("Late readings of line 2", "ab12".repeat(16))
        .contains("Schicht 1 Outer skin", "Mittelwert 14,1235 14,2000")
        .contains("Urteil fähig nicht stabil");
    assertThat(Papers.text(Papers.pdf(USUAL, "en")))
        .contains("Draft, not issued", "Released by ____");
  }

  /** 1.329 is below 1.33 and must not be printed as if it were not. */
  @Test
  void anIndexJustBelowWhatIsAskedForDoesNotLookLikeIt() {
    Wording wording = new Wording(new Texts(Language.DE), SampleReports.usual());
    assertThat(wording.index(1.3291)).isEqualTo("1,329");
    assertThat(wording.index(1.32996)).isEqualTo("1,32996");
    assertThat(wording.index(1.3304)).isEqualTo("1,33");
    assertThat(wording.index(1.33)).isEqualTo("1,33");
    assertThat(wording.index(1.2291)).isEqualTo("1,23");
  }

  @Test
  void cautionsAndMethodStandInEveryReport() throws IOException {
    assertThat(Papers.text(Papers.pdf(USUAL, "en")))
        .contains(
            "A chart is not a safety interlock and not a release test.",
            "lock-out procedure",
            "released by the responsible person",
            "ISO 22514-2",
            "ISO 7870-2");
  }

  @Test
  void aLanguageThatIsNotThereIsRefusedWithTheChoices() {
    assertThatThrownBy(() -> Papers.pdf(USUAL, "fr"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("give en or de");
  }

  private static Document parsed(String html) throws Exception {
    DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    builder.setEntityResolver((id, address) -> new InputSource(new java.io.StringReader("")));
    return builder.parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
  }
}
