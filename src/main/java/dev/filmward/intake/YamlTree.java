package dev.filmward.intake;

import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;

/**
 * Takes a YAML document, gives its nodes with their lines.
 *
 * <p>Values are kept as they are written, so that {@code 007} stays a name. Nothing is built from
 * tags and nothing from aliases: an alias is a fault, as is a key given twice. Depth and size are
 * bounded. One owner, one thread.
 */
final class YamlTree {
  private static final int DEEPEST = 32;
  private static final int MOST_SIGNS = 4 * 1024 * 1024;

  private final YAMLParser parser;
  private final Faults faults;

  private YamlTree(YAMLParser parser, Faults faults) {
    this.parser = parser;
    this.faults = faults;
  }

  /**
   * Reads the first document.
   *
   * @param faults where aliases and double keys are noted
   * @throws IOException if it is no YAML
   */
  static YamlNode read(String document, Faults faults) throws IOException {
    LoaderOptions limits = new LoaderOptions();
    limits.setNestingDepthLimit(DEEPEST);
    limits.setCodePointLimit(MOST_SIGNS);
    limits.setMaxAliasesForCollections(1);
    YAMLFactory factory = YAMLFactory.builder().loaderOptions(limits).build();
    try (YAMLParser parser = factory.createParser(document)) {
      YamlTree tree = new YamlTree(parser, faults);
      return parser.nextToken() == null ? new YamlNode.Scalar(1, "") : tree.node();
    }
  }

  private YamlNode node() throws IOException {
    if (parser.isCurrentAlias()) {
      faults.add(line(), "*" + parser.getText() + " is an alias; write out what it stands for");
      return new YamlNode.Scalar(line(), "");
    }
    return switch (parser.currentToken()) {
      case START_OBJECT -> mapping();
      case START_ARRAY -> listing();
      case VALUE_NULL -> new YamlNode.Scalar(line(), "");
      default -> new YamlNode.Scalar(line(), parser.getText().strip());
    };
  }

  private YamlNode listing() throws IOException {
    int line = line();
    List<YamlNode> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(node());
    }
    return new YamlNode.Listing(line, items);
  }

  private YamlNode mapping() throws IOException {
    int line = line();
    Map<String, YamlNode> values = new LinkedHashMap<>();
    Map<String, Integer> keyLines = new HashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName().strip();
      int keyLine = line();
      parser.nextToken();
      YamlNode value = node();
      if (values.putIfAbsent(key, value) != null) {
        faults.add(keyLine, Words.quoted(key) + " is given twice; leave one of them out");
      }
      keyLines.putIfAbsent(key, keyLine);
    }
    return new YamlNode.Mapping(line, values, keyLines);
  }

  private int line() {
    return parser.currentTokenLocation().getLineNr();
  }
}
