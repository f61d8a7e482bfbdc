package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The keys that a module asks for are read from it: chosen, put together, from lists and calls. */
class AskedKeysTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      textBlock =
          """
          t('open')                                                     | open
          t.nodes('link', { name: t.maybe(code) ?? 'x' })               | link, •
          t(n > 1 ? 'many' : 'one', { n })                              | many, one
          t(a ? 'x' : b === 'y' ? 'y' : (c ?? 'z'))                     | x, y, z, •
          t(names[kind] ?? 'other')                                     | other, •
          t(`state.${state}`)                                           | state.•
          t(`${group}.of.${name}.word`)                                 | •.of.•.word
          t(`role.${isOuter ? 'skin' : 'core'}`)                        | role.core, role.skin
          ['a', 'b'].map((name) => t(`head.${name}`))                   | head.a, head.b
          const ALL = ['a', 'b']; ALL.map((name, i) => t(name))         | a, b
          const MORE = ['b']; ['a', ...MORE].forEach((n) => { t(n); })  | a, b
          [['a', 1], ['b', 2]].map(([word, n]) => t(word, { n }))       | a, b
          [{ name: 'a', ms: 1 }].map(({ ms, name }) => t(`r.${name}`))  | r.a
          for (const one of ['a', 'b']) { t(`x.${one}`); }              | x.a, x.b
          const WORD = { up: 'a', 'so-so': 'b' }; t(WORD[way])          | a, b
          const W = { up: 1, 'so-so': 2 }; Object.keys(W).map((k) => t(k)) | so-so, up
          const W = { up: 1 }; Object.entries(W).map(([k, n]) => t(k, { n })) | up
          function row(key, n) { return t(`row.${key}`, { n }); } [row('a', 1), row('b', 2)] | row.a, row.b
          const row = (key) => t(key); row('a'); row(x ? 'b' : 'c')     | a, b, c
          export function row(key) { return t(key); } row('a')          | •
          const key = n > 0 ? 'some' : 'none'; t(key)                   | none, some
          const name = 'outer'; ['a'].map((name) => t(name))            | a
          names.map((name) => t(name)); const name = 'outer'            | •
          // t('comment')                                               |
          other.t('no'); format('no'); `t('no')`                        |
          """)
  void keysAreRead(String body, String keys) throws IOException {
    Set<String> found = new TreeSet<>();
    asked("const t = await room('help');\n" + body).forEach(one -> found.addAll(one.keys()));
    assertThat(found).as(body).isEqualTo(keys == null ? Set.of() : Set.of(keys.split(", ")));
  }

  @Test
  void listsOfOtherModulesAreRead() throws IOException {
    Files.writeString(folder.resolve("states.js"), "export const STATES = ['held', 'free'];");
    assertThat(
            asked(
                "import { STATES } from './states.js'; const s = await room('rolls');\n"
                    + "STATES.map((state) => s(`tab.${state}`))"))
        .containsExactly(
            new AskedKeys("module.js:2", "rolls", Set.of("tab.free", "tab.held"), false));
  }

  @Test
  void whatIsMissingIsTold() {
    Set<String> known = Set.of("state.open", "state.closed", "one");
    assertThat(of(Set.of("state.open", "one"), false).missing(known)).isEmpty();
    assertThat(of(Set.of("one", "many"), false).missing(known)).containsExactly("many");
    assertThat(of(Set.of("state.•"), false).missing(known)).isEmpty();
    assertThat(of(Set.of("stat.•"), false).missing(known)).containsExactly("stat.•");
    assertThat(of(Set.of("•.open.•"), false).missing(known)).containsExactly("•.open.•");
    assertThat(of(Set.of("one", "many"), true).missing(known)).isEmpty();
    assertThat(of(Set.of("two", "many"), true).missing(known)).hasSize(2);
    assertThat(of(Set.of("state.•"), false).asksFor("state.open")).isTrue();
    assertThat(of(Set.of("state.•"), false).asksFor("one")).isFalse();
    assertThat(of(Set.of("•"), false).asksFor("one")).isFalse();
  }

  private static AskedKeys of(Set<String> keys, boolean mayBeMissing) {
    return new AskedKeys("x.js:1", "room", keys, mayBeMissing);
  }

  private List<AskedKeys> asked(String source) throws IOException {
    return AskedKeys.of(Files.writeString(folder.resolve("module.js"), source));
  }
}
