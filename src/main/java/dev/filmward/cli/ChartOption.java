package dev.filmward.cli;

import dev.filmward.pipeline.OtherChart;
import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a chart. */
final class ChartOption implements ITypeConverter<OtherChart> {
  @Override
  public OtherChart convert(String text) {
    return Arrays.stream(OtherChart.values())
        .filter(chart -> chart.word().equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "\"" + text + "\" is no chart; choose among " + choices()));
  }

  private static String choices() {
    return Arrays.stream(OtherChart.values())
        .map(OtherChart::word)
        .collect(Collectors.joining(", "));
  }
}
