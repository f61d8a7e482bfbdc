package dev.filmward.telling;

import java.util.Optional;

/**
 * Settings as somebody decided them.
 *
 * @param version 0 for those of the beginning
 * @param decided empty for those of the beginning
 */
public record SettingsVersion(Settings settings, int version, Optional<Decided> decided) {
  public static final SettingsVersion BEGINNING =
      new SettingsVersion(Settings.BEGINNING, 0, Optional.empty());
}
