package dev.filmward;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.cli.Main;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The service gives Filmward no more than it needs, and starts what there is. */
class ServiceUnitTest {
  private static final Pattern SETTING = Pattern.compile("([A-Za-z]+)=(.*)");

  private final Map<String, List<String>> settings = settings();

  private static Map<String, List<String>> settings() {
    Map<String, List<String>> found = new TreeMap<>();
    String section = "";
    for (String line : lines()) {
      Matcher setting = SETTING.matcher(line);
      if (line.startsWith("[") && line.endsWith("]")) {
        section = line.substring(1, line.length() - 1);
      } else if (setting.matches()) {
        found
            .computeIfAbsent(section + "." + setting.group(1), key -> new ArrayList<>())
            .add(setting.group(2));
      } else {
        assertThat(line).as("a setting, a section, a comment or nothing").matches("#.*|\\s*");
      }
    }
    return found;
  }

  private static List<String> lines() {
    try {
      return Files.readAllLines(Path.of("src/dist/filmward.service"));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void itHasNoPowersAndWritesToItsOwnFolderOnly() {
    for (String yes :
        List.of("DynamicUser", "NoNewPrivileges", "ProtectHome", "PrivateTmp", "PrivateDevices")) {
      assertThat(settings).containsEntry("Service." + yes, List.of("yes"));
    }
    assertThat(settings)
        .containsEntry("Service.ProtectSystem", List.of("strict"))
        .containsEntry("Service.CapabilityBoundingSet", List.of(""))
        .containsEntry("Service.StateDirectory", List.of("filmward"))
        .containsEntry("Service.Restart", List.of("on-failure"))
        .containsKeys("Service.MemoryMax", "Service.SystemCallFilter")
        // its compiler writes code
        .doesNotContainKey("Service.MemoryDenyWriteExecute");
    assertThat(settings.get("Service.EnvironmentFile")).allMatch(file -> file.startsWith("-/etc/"));
    assertThat(settings.values().toString().toLowerCase(java.util.Locale.ROOT))
        .doesNotContain("password=", "token=");
  }

  @Test
  void itStartsACommandThatThereIsInTheFolderThatItMayWriteTo() {
    String[] words = settings.get("Service.ExecStart").get(0).split(" ");
    int jar = List.of(words).indexOf("-jar");
    String command = words[jar + 2];
    assertThat(Main.commands()).containsKey(command);
    assertThat(words).contains("--data", "/var/lib/filmward");
    for (String word : words) {
      if (word.startsWith("--")) {
        assertThat(Main.commands().get(command).getCommandSpec().optionsMap()).containsKey(word);
      }
    }
    assertThat(settings.get("Service.SuccessExitStatus")).containsExactly("143");
  }
}
