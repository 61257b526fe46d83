package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.AbstractGroup;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.model.Structure;
import ca.uhn.hl7v2.model.Type;
import ca.uhn.hl7v2.model.v251.message.ORU_R01;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import cistern.checks.OutsideCheck;
import cistern.exchange.hl7v2.Hl7Writer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Messages parsed strictly by the reference library, and each field held against the dictionary of
 * HL7 v2.5.1 that its structures carry: known, given where required, no longer and no more often
 * than allowed.
 */
class DictionaryTest {

  /** A work-up need not name a person or a time, and none is made up. */
  private static final Set<String> MAY_BE_UNKNOWN = Set.of("PID-3", "MSH-7");

  /**
   * The fields that name the signs, which the library escapes, and two identifiers for which the
   * dictionary has 22 signs although the first part of their type alone has 199.
   */
  private static final Set<String> LONGER = Set.of("MSH-1", "MSH-2", "OBR-2", "OBR-3");

  private static List<String> troubles(String text) throws HL7Exception, IOException {
    try (HapiContext context = new DefaultHapiContext()) {
      context.setValidationContext(ValidationContextFactory.defaultValidation());
      Message message = context.getPipeParser().parse(text);
      assertThat(message).isInstanceOf(ORU_R01.class);
      List<String> troubles = new ArrayList<>();
      check((ORU_R01) message, troubles);
      return troubles;
    }
  }

  private static void check(AbstractGroup group, List<String> troubles) throws HL7Exception {
    group.getNonStandardNames().forEach(name -> troubles.add(name + " has no place there"));
    for (String name : group.getNames()) {
      for (Structure part : group.getAll(name)) {
        if (part instanceof AbstractGroup inner) {
          check(inner, troubles);
        } else if (part instanceof Segment segment && !segment.isEmpty()) {
          check(segment, troubles);
        }
      }
    }
  }

  private static void check(Segment segment, List<String> troubles) throws HL7Exception {
    if (segment.numFields() > segment.getNames().length) {
      troubles.add(segment.getName() + " has a field that the dictionary does not know");
    }
    for (int i = 1; i <= segment.getNames().length; i++) {
      String place = segment.getName() + "-" + i;
      Type[] given = segment.getField(i);
      boolean isGiven = given.length > 0 && !given[0].encode().isEmpty();
      if (segment.isRequired(i) && !isGiven && !MAY_BE_UNKNOWN.contains(place)) {
        troubles.add(place + " is required");
      }
      if (segment.getMaxCardinality(i) > 0 && given.length > segment.getMaxCardinality(i)) {
        troubles.add(place + " comes too often");
      }
      for (Type field : given) {
        if (segment.getLength(i) > 0
            && !LONGER.contains(place)
            && field.encode().length() > segment.getLength(i)) {
          troubles.add(place + " is longer than " + segment.getLength(i));
        }
      }
    }
  }

  @Test
  void messages_ofAwkwardWorkups_followTheDictionary() throws HL7Exception, IOException {
    check(SentExports.few(Hl7Writer::write));
  }

  @Test
  @Tag("long")
  void messages_ofEveryExample_followTheDictionary() throws HL7Exception, IOException {
    Map<String, String> messages = SentExports.all(Hl7Writer::write);
    check(messages);
    OutsideCheck.of(
            "HL7 v2.5.1 messages as they go out, field by field",
            "HAPI 2.6.0, strict parser and the dictionary in its structures",
            "every field known, given where required, not too long, not too often")
        .toTable(messages.size() + " messages without an error");
  }

  private static void check(Map<String, String> messages) throws HL7Exception, IOException {
    for (Map.Entry<String, String> message : messages.entrySet()) {
      assertThat(troubles(message.getValue())).as(message.getKey()).isEmpty();
    }
  }

  @Test
  void dictionary_ofAMessageThatIsWrong_findsIt() throws HL7Exception, IOException {
    String wrong =
        "MSH|^~\\&|a|b|||20310302||ORU^R01^ORU_R01|1|T|2.5.1\rPID|1||p||N\rOBR|1\rZZZ|1\r";
    // OBR-4 (universal service identifier) is required in v2.5.1; ZZZ is no segment of ORU^R01.
    assertThat(troubles(wrong)).contains("OBR-4 is required", "ZZZ has no place there");
  }
}
