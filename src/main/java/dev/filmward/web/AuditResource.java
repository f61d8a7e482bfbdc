package dev.filmward.web;

import dev.filmward.pipeline.AuditExport;
import dev.filmward.pipeline.AuditExport.Format;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.AuditTable.Period;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/** The audit chain, for auditors. */
final class AuditResource {
  private final Plant plant;

  AuditResource(Plant plant) {
    this.plant = plant;
  }

  /** By way of a file, so that a slow reader does not hold the database. */
  void get(Context ctx) throws IOException {
    Format format = format(Requests.textOr(ctx, "format", "json"));
    Period period =
        new Period(
            AuditExport.moment(Requests.textOr(ctx, "from", ""), plant.zone()),
            AuditExport.moment(Requests.textOr(ctx, "to", ""), plant.zone()));
    String word = format.name().toLowerCase(Locale.ROOT);
    Path file = Files.createTempFile("filmward-audit", "." + word);
    try {
      write(file, period, format);
      ctx.contentType(format == Format.CSV ? "text/csv; charset=utf-8" : "application/json")
          .header("Content-Disposition", "attachment; filename=\"filmward-audit." + word + "\"")
          .result(Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE));
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(file);
      throw e;
    }
  }

  private void write(Path file, Period period, Format format) throws IOException {
    try (Writer out = Files.newBufferedWriter(file)) {
      long unused =
          plant
              .store()
              .read(
                  tables -> {
                    try {
                      return AuditExport.write(tables.audit(), period, format, out);
                    } catch (IOException e) {
                      throw new UncheckedIOException(e);
                    }
                  });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static Format format(String word) {
    return switch (word) {
      case "json" -> Format.JSON;
      case "csv" -> Format.CSV;
      default -> throw new IllegalArgumentException("format is json or csv, not \"" + word + "\"");
    };
  }
}
