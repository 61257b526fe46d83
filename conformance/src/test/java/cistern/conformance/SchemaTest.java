package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import cistern.checks.OutsideCheck;
import cistern.exchange.fhir.FhirWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.SAXException;

/** Bundles read strictly by the reference library, and as XML by the JDK under the schema of R4. */
class SchemaTest {

  private static final String FOLDER = "/org/hl7/fhir/r4/model/schema/";

  private static InputStream part(String name) {
    return Objects.requireNonNull(SchemaTest.class.getResourceAsStream(FOLDER + name), name);
  }

  /** The schema of R4; its two parts are those of the same library, and nothing is fetched. */
  private static Schema schema() throws ReflectiveOperationException, SAXException {
    SchemaFactory factory = SchemaFactory.newDefaultInstance();
    factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    DOMImplementationLS inputs =
        (DOMImplementationLS) DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
    factory.setResourceResolver(
        (type, namespace, publicId, systemId, base) -> {
          LSInput input = inputs.createLSInput();
          input.setByteStream(part(systemId.replaceFirst(".*/", "")));
          input.setSystemId(systemId);
          return input;
        });
    return factory.newSchema(new StreamSource(part("fhir-single.xsd"), "fhir-single.xsd"));
  }

  @Test
  void bundles_ofAwkwardWorkups_areValid() throws Exception {
    check(SentExports.few(FhirWriter::write));
  }

  @Test
  @Tag("long")
  void bundles_ofEveryExample_areValid() throws Exception {
    Map<String, String> bundles = SentExports.all(FhirWriter::write);
    check(bundles);
    OutsideCheck.of(
            "FHIR bundles as they go out, read strictly and as XML under the schema",
            "HAPI FHIR 8.8.1 and its R4 schema, the JDK's validator",
            "no error")
        .toTable(bundles.size() + " bundles without an error");
  }

  private static void check(Map<String, String> bundles) throws Exception {
    Schema schema = schema();
    FhirContext context = FhirContext.forR4Cached();
    IParser json = context.newJsonParser().setParserErrorHandler(new StrictErrorHandler());
    bundles.forEach(
        (name, bundle) -> assertThat(trouble(bundle, json, context, schema)).as(name).isEmpty());
    assertThat(bundles).hasSizeGreaterThanOrEqualTo(10);
  }

  @Test
  void schema_ofABundleThatIsWrong_findsIt() throws Exception {
    FhirContext context = FhirContext.forR4Cached();
    String wrong =
        "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":"
            + "{\"resourceType\":\"Observation\",\"valueString\":\"a\"}}]}";
    // Observation.status and Observation.code have cardinality 1..1 in R4.
    assertThat(trouble(wrong, context.newJsonParser(), context, schema())).isPresent();
  }

  private static Optional<String> trouble(
      String bundle, IParser json, FhirContext context, Schema schema) {
    try {
      Bundle read = json.parseResource(Bundle.class, bundle);
      String xml = context.newXmlParser().encodeResourceToString(read);
      schema.newValidator().validate(new StreamSource(new StringReader(xml)));
      return Optional.empty();
    } catch (SAXException | ca.uhn.fhir.parser.DataFormatException e) {
      return Optional.of(String.valueOf(e.getMessage()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
