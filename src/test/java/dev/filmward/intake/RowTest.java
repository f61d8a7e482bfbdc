package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** How rows are told apart and split into fields; the sample's name shows what was read. */
class RowTest {
  private static final String H = LongLayoutTest.HEADER;

  private static String row(String sample) {
    return "2026-11-25T09:30Z,L1,LID-60,R7," + sample + ",3,2,4.25";
  }

  /** Sample names of the readings, and the lines of the rejections in angle brackets. */
  private static String summary(String csv) throws Exception {
    Seen seen = Seen.in(csv);
    assertThat(seen.count.rows()).isEqualTo(seen.events.size());
    return seen.events.stream()
        .map(
            event ->
                event instanceof Rejection rejection
                    ? "<" + rejection.line() + ">"
                    : ((Seen.Place) event).key().sample())
        .collect(Collectors.joining("|"));
  }

  static Stream<Arguments> files() {
    return Stream.of(
        Arguments.of("line feeds", row("a") + "\n" + row("b") + "\n", "a|b"),
        Arguments.of("carriage returns too", row("a") + "\r\n" + row("b") + "\r\n", "a|b"),
        Arguments.of("both", row("a") + "\r\n" + row("b") + "\n" + row("c") + "\r\n", "a|b|c"),
        Arguments.of("no end of the last line", row("a") + "\n" + row("b"), "a|b"),
        Arguments.of("a carriage return at the end", row("a") + "\n" + row("b") + "\r", "a|b"),
        Arguments.of("blank lines", "\n" + row("a") + "\n\n \t \n\r\n" + row("b") + "\n\n", "a|b"),
        Arguments.of("blank lines count", "\n\r\n  \n" + row("x,y") + "\n", "<5>"),
        Arguments.of("spaces around", row("  a b\t") + " \n", "a b"),
        Arguments.of("spaces in front of the row", "  " + row("a") + "\n", "a"),
        Arguments.of("no name", row("") + "\n", ""),
        Arguments.of("quotes", row("\"a\"") + "\n", "a"),
        Arguments.of("spaces around quotes", row(" \"a\" ") + "\n", "a"),
        Arguments.of("spaces within quotes", row("\" a \"") + "\n", "a"),
        Arguments.of("a separator within quotes", row("\"a,b\"") + "\n", "a,b"),
        Arguments.of("a line feed within quotes", row("\"a\nb\"") + "\n" + row("c"), "a\nb|c"),
        Arguments.of("CR LF within quotes", row("\"a\r\nb\"") + "\r\n" + row("c"), "a\r\nb|c"),
        Arguments.of("doubled quotes", row("\"a \"\"b\"\" c\"") + "\n", "a \"b\" c"),
        Arguments.of("only doubled quotes", row("\"\"\"\"") + "\n", "\""),
        Arguments.of("empty quotes", row("\"\"") + "\n", ""),
        Arguments.of("a quote further in", row("12\" roll") + "\n", "12\" roll"),
        Arguments.of("quoted last field", row("a").replace("4.25", "\"4.25\"") + "\r\n", "a"),
        Arguments.of("quoted last field of the file", row("a").replace("4.25", "\"4.25\""), "a"),
        Arguments.of(
            "quoted first field",
            "\"2026-11-25T09:30Z\"" + row("a").substring("2026-11-25T09:30Z".length()),
            "a"),
        Arguments.of("text after quotes", row("\"a\"b") + "\n" + row("c"), "<2>|c"),
        Arguments.of("text, then comma", row("\"a\"b,c") + "\n" + row("c"), "<2>|c"),
        Arguments.of("quote after quotes", row("\"a\" \"b\"") + "\n" + row("c"), "<2>|c"),
        Arguments.of("a carriage return further in", row("a\rb") + "\n", "a\rb"),
        Arguments.of(
            "control characters", row("a\u0001\u0000\u001bb") + "\n", "a\u0001\u0000\u001bb"),
        Arguments.of("NUL for a row", "\u0000\n" + row("a"), "<2>|a"),
        Arguments.of("any script", row("Ł-Ω-漢-😀-عرب") + "\n", "Ł-Ω-漢-😀-عرب"),
        Arguments.of("markup", row("<b>&amp;'") + "\n", "<b>&amp;'"),
        Arguments.of("only separators", ",,,,,,,\n" + row("a"), "<2>|a"),
        Arguments.of(
            "line numbers after quoted line feeds", row("\"a\n\nb\"") + "\nx\n", "a\n\nb|<5>"),
        Arguments.of("bad row of several lines", "\"a\nb\nc\"\n" + row("d") + "\nx", "<2>|d|<6>"),
        Arguments.of("open quote", row("\"a") + "\n" + row("b") + "\n" + row("c"), "<2>|b|c"),
        Arguments.of("open quote in the last line", row("a") + "\n" + row("\"b"), "a|<3>"),
        Arguments.of("open quote at the end", row("a") + "\n\"", "a|<3>"),
        Arguments.of(
            "open quotes on many lines",
            row("\"a") + "\n" + row("x\",\"") + "\n" + row("x\",\"") + "\n" + row("c"),
            "<2>|<3>|<4>|c"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("files")
  void rowsAreToldApart(String what, String rows, String expected) throws Exception {
    assertThat(summary(H + rows)).isEqualTo(expected);
  }

  @Test
  void linesMayEndWithCarriageReturnsOnly() throws Exception {
    String csv = H + row("a") + "\n" + row("b") + "\n\n" + row("x,y") + "\n";

    assertThat(summary(csv.replace('\n', '\r'))).isEqualTo("a|b|<5>").isEqualTo(summary(csv));
  }

  @Test
  void tabsSeparateAndThenAreNoSpaces() throws Exception {
    String csv = H + row(" a ") + "\n,,,,,,,\n" + row("") + "\n \n";

    assertThat(summary(csv.replace(',', '\t'))).isEqualTo("a|<3>|");
  }

  @Test
  void semicolonsSeparate() throws Exception {
    assertThat(summary((H + row("a") + "\n").replace(',', ';') + row("b;c") + "\n"))
        .isEqualTo("a|<3>");
  }

  @Test
  void theRawRowKeepsItsQuotesAndLineFeeds() throws Exception {
    Seen seen = Seen.in(H + "\n\"a\"\"b\",\"c\nd\" \r\n" + row("e"));

    assertThat(seen.rejection().line()).isEqualTo(3);
    assertThat(seen.rejection().raw()).isEqualTo("\"a\"\"b\",\"c\nd\" ");
  }

  @Test
  void anOpenQuoteSaysSo() throws Exception {
    assertThat(Seen.in(H + row("\"a")).rejection().reason())
        .isEqualTo(
            "a quotation mark is opened and not closed within 1 MiB;"
                + " close it, or double it where it is part of the text");
    assertThat(Seen.in(H + row("\"a\"b")).rejection().reason())
        .isEqualTo("text follows a closing quotation mark; double a mark that is part of the text");
  }
}
