package dev.filmward.cli;

import dev.filmward.rule.SignalTest;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a test. */
final class TestOption implements ITypeConverter<SignalTest> {
  @Override
  public SignalTest convert(String text) {
    try {
      return SignalTest.fromWord(text);
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(String.valueOf(e.getMessage()));
    }
  }
}
