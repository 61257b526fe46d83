package cistern.clinic.facts;

import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.Medicine;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.paper.CitedText;
import java.util.Collection;
import java.util.List;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * Every fact and setting in force: value, unit, status, source, and whether local policy changed
 * it.
 */
public final class FactsScreen {

  private final Frame frame;
  private final Medicine medicine;

  private FactsScreen(Frame frame, Medicine medicine) {
    this.frame = frame;
    this.medicine = medicine;
  }

  /** The screen of the facts that a medicine stands on. */
  public static FactsScreen of(Frame frame, Medicine medicine) {
    return new FactsScreen(frame, medicine);
  }

  /** Its route. */
  public List<Route> routes() {
    return List.of(Route.get("/facts", Permission.BE_HERE, this::page));
  }

  private ServerResponse page(PageRequest visit) {
    Facts facts = medicine.facts();
    return Responses.page(
        frame.toHtml(
            visit,
            "Facts in force",
            Element.of("h1", "Facts in force"),
            Html.paragraph(
                facts
                    .policy()
                    .map(p -> "Changed by local policy " + p + " where it says so.")
                    .orElse("No local policy changes them.")),
            visit.isAllowed(Permission.KEEP_RULES)
                ? Html.paragraph("").with(Html.link("/rules", "Change a rule of the house"))
                : Html.nothing(),
            table("Settings of the clinic", Setting.table().facts()),
            table("Facts of the medicine: " + facts.version(), facts.all())));
  }

  private static Node table(String caption, Collection<Fact> all) {
    return Html.table(
        caption,
        List.of("Key", "Value", "Unit", "Status", "Source", "Changed"),
        all.stream().map(FactsScreen::row).toList());
  }

  private static List<Node> row(Fact fact) {
    return List.of(
        Element.of("code", fact.key()),
        text(fact.value().toText()),
        text(fact.unit()),
        Element.of("span", fact.status().word()).with("class", "in-one"),
        CitedText.of(fact.citation(), fact.cited().references()),
        text(fact.standard().map(s -> "by local policy; standard " + s.toText()).orElse("")));
  }
}
