package cistern.clinic.casework;

import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.puncture.procedure.WarningSign;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A call after the puncture, done in one place: all asked and nothing found is one press; what was
 * found is one press each.
 */
public final class CallForm {

  /** Whether there is a headache. */
  static final String HEADACHE = "headache";

  /** The signs that are there. */
  static final String SIGN = "sign";

  /** Says that everything that is not marked was asked and is not there. */
  static final String ASKED = "asked";

  private CallForm() {}

  /** The form of a case, folded. */
  public static Element toElement(PageRequest visit, String caseId, String name) {
    List<Element> boxes = new ArrayList<>();
    boxes.add(box(caseId, HEADACHE, "yes", "A headache since the puncture?"));
    Arrays.stream(WarningSign.values())
        .map(s -> box(caseId, SIGN, s.field(), s.question()))
        .forEach(boxes::add);
    return Element.of(
            "details",
            Element.of("summary", "Call").with("aria-label", "Call: the questions for " + name),
            visit
                .form("/cases/" + caseId + "/call")
                .with("class", "call")
                .with(
                    Html.paragraph("Ask each of these. Mark what is there."),
                    Element.of("div").with("class", "boxes").with(boxes),
                    Html.division(
                        "actions",
                        Html.button("I asked everything: what is not marked is not there")
                            .with("name", ASKED)
                            .with("value", "all"),
                        Html.button("Save only what is marked")
                            .with("name", ASKED)
                            .with("value", "some")
                            .with("class", "second-button"))))
        .with("class", "calling");
  }

  private static Element box(String caseId, String name, String value, String words) {
    String id = name + "-" + value + "-" + caseId;
    return Element.of(
        "div",
        Element.of("input")
            .with("type", "checkbox")
            .with("name", name)
            .with("value", value)
            .with("id", id),
        Element.of("label", words).with("for", id));
  }
}
