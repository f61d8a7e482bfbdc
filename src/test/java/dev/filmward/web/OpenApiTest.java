package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.filmward.people.Permission;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The description of the interface says what the server does, and is well formed. */
class OpenApiTest {
  private static final String WHERE =
      "src/main/resources/openapi/ (add a new file to OpenApi.FILES)";
  private static final List<String> METHODS =
      List.of("get", "put", "post", "delete", "options", "head", "patch", "trace");
  private static final Pattern IN_PATH = Pattern.compile("\\{(\\w+)}");

  private final JsonNode document = document();

  @TempDir private Path folder;

  private static JsonNode document() {
    try {
      return new ObjectMapper().readTree(OpenApi.load().json());
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void describesEveryRouteThatThereIsAndNoOther() throws Exception {
    Map<String, String> served = new TreeMap<>();
    try (ServedPlant plant = ServedPlant.in(folder)) {
      plant.routes().forEach(known -> served.put(key(known), known.permission().word()));
    }
    Map<String, String> described = new TreeMap<>();
    operations(
        (path, method, operation) ->
            described.put(
                method.toUpperCase(java.util.Locale.ROOT) + " " + path,
                operation.path("x-permission").asText()));
    assertThat(advice(served, described)).isEmpty();
  }

  private static String key(Routes.Known known) {
    return known.method() + " " + known.path();
  }

  /** What to write where, a line a difference. */
  private static List<String> advice(Map<String, String> served, Map<String, String> described) {
    List<String> advice = new ArrayList<>();
    served.forEach(
        (route, permission) -> {
          if (!described.containsKey(route)) {
            advice.add(missing(route, permission));
          } else if (!permission.equals(described.get(route))) {
            advice.add(route + " needs x-permission: " + permission);
          }
        });
    described.keySet().stream()
        .filter(route -> !served.containsKey(route))
        .forEach(
            route -> advice.add(route + " is described but not served; take it out of " + WHERE));
    return advice;
  }

  private static String missing(String route, String permission) {
    String[] parts = route.split(" ");
    String method = parts[0].toLowerCase(java.util.Locale.ROOT);
    return """
        %s is not described; write into a file of %s:
        paths:
          %s:
            %s:
              operationId: (a name of its own)
              summary: (what it answers or does)
              tags: [(one of frame.yaml)]
              x-permission: %s
              parameters: [(each name in the path and the query%s)]
              responses:
                "200":
                  description: (what comes back)
                  content: {application/json: {schema: {$ref: "#/components/schemas/(yours)"}}}
                default: {$ref: "#/components/responses/error"}
        """
        .formatted(
            route,
            WHERE,
            parts[1],
            method,
            permission,
            method.equals("get") ? "" : "; {$ref: \"#/components/parameters/changes\"}");
  }

  @Test
  void theAdviceNamesTheRouteItsPermissionAndTheFolder() {
    assertThat(advice(Map.of("GET /api/v1/rolls", "dispose"), Map.of("GET /api/v1/gone", "read")))
        .hasSize(2)
        .anySatisfy(
            words ->
                assertThat(words)
                    .contains("/api/v1/rolls:", "x-permission: dispose", "resources/openapi"))
        .anySatisfy(words -> assertThat(words).contains("/api/v1/gone", "not served"));
    assertThat(advice(Map.of("GET /a", "read"), Map.of("GET /a", "audit")))
        .containsExactly("GET /a needs x-permission: read");
  }

  @Test
  void hasTheKeysThatOpenApiRequires() {
    assertThat(document.path("openapi").asText()).matches("3\\.1\\.\\d+");
    assertThat(document.at("/info/title").asText()).isNotBlank();
    assertThat(document.at("/info/version").asText()).isNotBlank();
    assertThat(document.at("/info/license/name").asText()).isEqualTo("Apache-2.0");
    Set<String> ids = new HashSet<>();
    operations((path, method, operation) -> operation(path + " " + method, operation, ids));
    assertThat(ids).hasSizeGreaterThan(30);
  }

  private void operation(String where, JsonNode operation, Set<String> ids) {
    assertThat(ids.add(operation.path("operationId").asText())).as("own id of " + where).isTrue();
    assertThat(operation.path("summary").asText()).as("summary of " + where).isNotBlank();
    assertThat(names(document.path("tags"))).as("tags of " + where).contains(first(operation));
    assertThat(operation.path("responses").has("200")).as("200 of " + where).isTrue();
    operation
        .path("responses")
        .forEach(answer -> assertThat(resolved(answer).path("description").asText()).isNotBlank());
    boolean isOpen = operation.path("x-permission").asText().equals(Permission.ANYBODY.word());
    assertThat(operation.has("security")).as("security of " + where).isEqualTo(isOpen);
    parameters(where, operation);
    if (where.endsWith(" post")) {
      assertThat(operation.path("requestBody").path("content")).as("body of " + where).isNotEmpty();
    }
  }

  private static String first(JsonNode operation) {
    return operation.path("tags").path(0).asText();
  }

  private void parameters(String where, JsonNode operation) {
    Set<String> inPath = new HashSet<>();
    Set<String> headers = new HashSet<>();
    for (JsonNode given : operation.path("parameters")) {
      JsonNode parameter = resolved(given);
      assertThat(parameter.path("name").asText()).as("a parameter of " + where).isNotBlank();
      assertThat(parameter.has("schema")).as("schema of a parameter of " + where).isTrue();
      assertThat(List.of("query", "path", "header")).contains(parameter.path("in").asText());
      if (parameter.path("in").asText().equals("path")) {
        assertThat(parameter.path("required").asBoolean()).isTrue();
        inPath.add(parameter.path("name").asText());
      } else if (parameter.path("in").asText().equals("header")) {
        headers.add(parameter.path("name").asText());
      }
    }
    assertThat(inPath)
        .as("names in the path of " + where)
        .isEqualTo(
            IN_PATH.matcher(where).results().map(m -> m.group(1)).collect(Collectors.toSet()));
    assertThat(headers.contains("X-Filmward")).as(where).isEqualTo(where.endsWith(" post"));
  }

  @Test
  void everyReferenceLeadsSomewhereAndEverySchemaOfTheListIsUsed() {
    Set<String> used = new HashSet<>();
    nodes(
        document,
        node -> {
          if (node.has("$ref")) {
            String to = node.get("$ref").asText();
            used.add(to);
            assertThat(to).startsWith("#/");
            assertThat(document.at(to.substring(1)).isMissingNode()).as(to).isFalse();
          }
        });
    document
        .at("/components/schemas")
        .fieldNames()
        .forEachRemaining(name -> assertThat(used).contains("#/components/schemas/" + name));
  }

  @Test
  void everySchemaIsJsonSchema() {
    Schema meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    List<JsonNode> schemas = new ArrayList<>();
    document.at("/components/schemas").forEach(schemas::add);
    nodes(
        document,
        node -> {
          if (node.has("schema")) {
            schemas.add(node.get("schema"));
          }
        });
    assertThat(schemas).hasSizeGreaterThan(100);
    schemas.forEach(schema -> assertThat(meta.validate(schema)).as("%s", schema).isEmpty());
    assertThat(meta.validate(MALFORMED)).isNotEmpty();
    schemas.forEach(OpenApiTest::requiredIsDescribed);
  }

  private static final JsonNode MALFORMED =
      new ObjectMapper().createObjectNode().put("type", "thickness");

  /** A misspelt name in "required" would be valid and never fulfilled. */
  private static void requiredIsDescribed(JsonNode schema) {
    nodes(
        schema,
        node -> {
          if (node.path("required").isArray() && node.has("properties")) {
            node.path("required")
                .forEach(name -> assertThat(node.path("properties").has(name.asText())).isTrue());
          }
        });
  }

  @Test
  void isServedAsItIs() throws Exception {
    try (ServedPlant plant = ServedPlant.in(folder)) {
      Api.Answer answer = plant.api().get("/api/v1/openapi.json");
      assertThat(answer.header("Content-Type")).startsWith("application/json");
      assertThat(answer.json()).isEqualTo(document);
    }
    assertThat(Arrays.stream(Permission.values()).map(Permission::word)).contains("read");
  }

  private interface Visitor {
    void visit(String path, String method, JsonNode operation);
  }

  private void operations(Visitor visitor) {
    document
        .path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .properties()
                    .forEach(
                        entry -> {
                          assertThat(METHODS).contains(entry.getKey());
                          visitor.visit(path.getKey(), entry.getKey(), entry.getValue());
                        }));
  }

  private JsonNode resolved(JsonNode node) {
    return node.has("$ref") ? document.at(node.get("$ref").asText().substring(1)) : node;
  }

  private static List<String> names(JsonNode tags) {
    return StreamSupport.stream(tags.spliterator(), false)
        .map(t -> t.get("name").asText())
        .toList();
  }

  private static void nodes(JsonNode node, Consumer<JsonNode> visitor) {
    visitor.accept(node);
    node.forEach(child -> nodes(child, visitor));
  }
}
