package dev.filmward.report.paper;

import java.util.Locale;

/** Languages that the paper speaks. */
public enum Language {
  EN(Locale.ENGLISH),
  DE(Locale.GERMAN);

  private final Locale locale;

  Language(Locale locale) {
    this.locale = locale;
  }

  Locale locale() {
    return locale;
  }

  /** As in an address: {@code en}, {@code de}. */
  public String code() {
    return locale.getLanguage();
  }

  /** By its code; says which there are. */
  public static Language of(String code) {
    for (Language language : values()) {
      if (language.code().equals(code)) {
        return language;
      }
    }
    throw new IllegalArgumentException("language \"" + code + "\": give en or de");
  }
}
