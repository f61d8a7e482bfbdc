package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Nothing that a person reads stands in a module, a page or a style sheet; it stands in {@code
 * web/text}. What is left has its reason in {@code words-of-modules.txt} beside this test, a line
 * {@code FILE: LITERAL} below a line that starts with # and says why.
 */
class WordsInModulesTest {
  private static final Path WEB = Path.of("web");
  private static final Path EXCEPTIONS =
      Path.of("src/test/resources/dev/filmward/web/words-of-modules.txt");

  @Test
  void nothingThatAPersonReadsStandsOutsideTheCatalogues() throws IOException {
    Set<String> found = everything();
    found.removeAll(exceptions());
    assertThat(found).as("words that belong into web/text").isEmpty();
  }

  @Test
  void everyExceptionIsStillThereOnceAndSaysWhy() throws IOException {
    assertThat(everything()).containsAll(exceptions());
    assertThat(exceptions()).doesNotHaveDuplicates();
    assertThat(Files.readAllLines(EXCEPTIONS).get(0)).startsWith("# ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "el('p', {}, 'nothing')",
        "el('p', { class: 'soft' }, ok ? t('yes') : ['no', t('b')])",
        "el('ul', {}, rows.map((row) => el('li', {}, `${row.n} left`)))",
        "el('ul', {}, rows.map((row) => row.name ?? 'unknown'))",
        "el('input', { placeholder: 'name' })",
        "el('td', { data: { word: 'trial' } })",
        "svg('svg', { 'aria-label': isWide ? t('wide') : 'narrow' })",
        "setText(node, done ? '' : 'waiting')",
        "node.textContent = 'ready'",
        "const RANGES = [{ name: 'day', words: 'Last day' }]",
        "const NAMES = ['Outer skin']",
        "const HEAD = 'Layer'",
        "words.join(' and ')",
        "part(`${count(n)} samples`)",
        "button('Close')",
        "throw new Error('no such layer')",
        "t('layer', { name: 'the total' })",
      })
  void wordsAreFound(String source) {
    assertThat(ReadableWords.ofModule(source)).as(source).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "// two words\n/* Two words */",
        "import { a } from './a file.js'",
        "el('p', { class: 'plain soft', hidden: true }, t('key'))",
        "el('p', {}, ['first', 'second'].map((key) => t(key)))",
        "el('p', {}, kind === 'two words' ? t('a') : t('b'))",
        "svg('path', { d: `M2 13V10 ${x} ${y}` })",
        "document.querySelector('main a.button, main button')",
        "getJson('/api/v1/board', { state: 'open' })",
        "console.error('two words')",
        "const LEVELS = ['high', 'medium']",
        "el('tr', { data: { state: 'not known' } })",
        "`${lower}\\u2013${upper}`",
        "fetch(`/api/v1/lines/${line}/missing`)",
        "/two words/.test(name)",
      })
  void whatNobodyReadsIsNot(String source) {
    assertThat(ReadableWords.ofModule(source)).as(source).isEmpty();
  }

  @Test
  void wordsOfPagesAndStyleSheetsAreFound() {
    assertThat(ReadableWords.ofPage("<a class=\"two words\" title=\"Skip\"><!-- no --> on </a>"))
        .containsExactly("Skip", "on");
    assertThat(ReadableWords.ofStyle("td::before { content: attr(data-word) \" of\"; }"))
        .containsExactly(" of");
    assertThat(ReadableWords.ofStyle("p { content: \"\\2212\"; justify-content: center; }"))
        .isEmpty();
  }

  /** As lines {@code FILE: WORDS}. */
  private static Set<String> everything() throws IOException {
    Set<String> found = new TreeSet<>();
    for (Path file : files()) {
      String source = Files.readString(file);
      String name = file.getFileName().toString();
      List<String> said =
          name.endsWith(".js")
              ? ReadableWords.ofModule(source)
              : name.endsWith(".css")
                  ? ReadableWords.ofStyle(source)
                  : ReadableWords.ofPage(source);
      said.forEach(words -> found.add((name.endsWith(".html") ? "*.html" : name) + ": " + words));
    }
    return found;
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.walk(WEB)) {
      return files.filter(file -> file.toString().matches(".*\\.(js|css|html)")).toList();
    }
  }

  private static List<String> exceptions() throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(EXCEPTIONS));
    lines.removeIf(line -> line.isBlank() || line.startsWith("#"));
    return lines;
  }
}
