package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The colours of the states as somebody sees them who is blind to red, green or blue, as Chromium
 * emulates it. Differences are CIELAB 1976 of sRGB (CIE 15; IEC 61966-2-1); about 2.3 are just
 * noticeable (value from memory: Mahy, Van Eycken and Oosterlinck 1994).
 */
class ColourSightIT {
  private static final double JUST_NOTICEABLE = 2.3;

  /** Common practice, no source: four steps that can just be told apart. */
  private static final double APART = 4 * JUST_NOTICEABLE;

  private static final int SWATCH = 40;
  private static final List<String> INKS = List.of("--act", "--watch", "--gauge", "--stale");
  private static final List<String> GROUNDS =
      List.of("--act-wash", "--watch-wash", "--gauge-wash", "--stale-wash");

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;

  @BeforeAll
  static void start() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.resize(800, 600);
    browser.signIn(served);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @ParameterizedTest
  @CsvSource({
    "light, none",
    "light, protanopia",
    "light, deuteranopia",
    "light, tritanopia",
    "dark, none",
    "dark, protanopia",
    "dark, deuteranopia",
    "dark, tritanopia"
  })
  void statesStayApart(String scheme, String sight) throws Exception {
    browser.prefer(scheme);
    browser.open(served.address("/help.html"));
    browser
        .driver()
        .executeCdpCommand("Emulation.setEmulatedVisionDeficiency", Map.of("type", sight));
    assertApart(INKS);
    assertApart(GROUNDS);
  }

  private static void assertApart(List<String> names) throws Exception {
    List<double[]> seen = seen(names);
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        double difference = distance(seen.get(i), seen.get(j));
        assertThat(difference).as(names.get(i) + " and " + names.get(j)).isGreaterThan(APART);
      }
    }
  }

  /** Swatches in a row over the page, as they come out on the screen. */
  private static List<double[]> seen(List<String> names) throws Exception {
    browser.script(
        "document.querySelector('#swatches')?.remove();"
            + "const row = document.createElement('div');"
            + "row.id = 'swatches';"
            + "row.style.cssText = 'position:fixed;inset:0;z-index:9999;display:flex';"
            + "for (const name of arguments[0]) {"
            + " const one = document.createElement('div');"
            + " one.style.cssText = `width:${arguments[1]}px;background:var(${name})`;"
            + " row.append(one); }"
            + "document.body.append(row);",
        names,
        SWATCH);
    Path picture = folder.resolve("swatches.png");
    browser.screenshot(picture);
    BufferedImage image = ImageIO.read(picture.toFile());
    List<double[]> seen = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      seen.add(lab(new Color(image.getRGB(i * SWATCH + SWATCH / 2, 300))));
    }
    return seen;
  }

  private static double distance(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += (one[i] - other[i]) * (one[i] - other[i]);
    }
    return Math.sqrt(sum);
  }

  private static double[] lab(Color color) {
    double r = linear(color.getRed());
    double g = linear(color.getGreen());
    double b = linear(color.getBlue());
    double x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
    double y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
    double z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double linear(int value) {
    double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }

  private static double root(double value) {
    return value > 216.0 / 24389 ? Math.cbrt(value) : (24389.0 / 27 * value + 16) / 116;
  }
}
