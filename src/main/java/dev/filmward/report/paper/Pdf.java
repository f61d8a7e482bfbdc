package dev.filmward.report.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.slf4j.Slf4jLogger;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Takes a paper, gives a PDF: tagged for readers of the screen (PDF/UA), fonts embedded, drawings
 * as vectors, dated by the report and numbered by its content, so that the same paper gives the
 * same bytes. Nothing is fetched from outside. Every thread may use it.
 */
final class Pdf {
  private static final int REGULAR = 400;
  private static final int BOLD = 700;

  static {
    XRLog.setLoggerImpl(new Slf4jLogger());
    XRLog.setLoggingEnabled(false);
  }

  private Pdf() {}

  static byte[] of(Paper paper, Sheet size) throws IOException {
    String html = html(paper, size);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useFont(
        () -> Fonts.open(Fonts.REGULAR_FILE), Fonts.SANS, REGULAR, FontStyle.NORMAL, true);
    builder.useFont(() -> Fonts.open(Fonts.BOLD_FILE), Fonts.SANS, BOLD, FontStyle.NORMAL, true);
    builder.useFont(() -> Fonts.open(Fonts.REST_FILE), Fonts.REST, REGULAR, FontStyle.NORMAL, true);
    builder.useUriResolver((base, uri) -> uri != null && uri.startsWith("#") ? uri : null);
    builder.usePdfUaAccessibility(true);
    builder.withProducer("Filmward");
    builder.withHtmlContent(html, null);
    try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      builder.useSVGDrawer(drawer);
      return set(builder, paper.at(), html);
    }
  }

  private static byte[] set(PdfRendererBuilder builder, Instant at, String html)
      throws IOException {
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      renderer.createPDFWithoutClosing();
      try (PDDocument document = renderer.getPdfDocument()) {
        Calendar moment = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        moment.setTimeInMillis(at.toEpochMilli());
        document.getDocumentInformation().setCreationDate(moment);
        document.getDocumentInformation().setModificationDate(moment);
        document.setDocumentId(idOf(html));
        document.save(out);
      }
      return out.toByteArray();
    }
  }

  private static long idOf(String html) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(html.getBytes(StandardCharsets.UTF_8));
      return ByteBuffer.wrap(digest).getLong();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static String html(Paper paper, Sheet size) {
    String body = new Markup(Medium.SHEET).body(paper.blocks());
    return Sheets.document(paper, Styles.sheet(size), body);
  }
}
