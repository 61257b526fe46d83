package cistern.clinic.trail;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.audit.AuditTrail.Filter;
import cistern.clinic.web.Html;
import cistern.clinic.web.Html.Choice;
import cistern.clinic.web.PageRequest;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;

/**
 * The form in which the entries of a case or of a person are looked for.
 *
 * @param visit who looks
 * @param filter what is shown
 * @param names of everybody
 */
record Finder(PageRequest visit, Filter filter, TrailNames names) {

  Node toNode() {
    List<Choice> people = new ArrayList<>(List.of(new Choice("", "anybody")));
    names
        .people()
        .forEach(a -> people.add(new Choice(a.id(), a.fullName() + ", " + a.role().word())));
    return Fragment.of(
        visit
            .form("/trail/find")
            .with("role", "search")
            .with("class", "finder")
            .with(
                field(
                    "Case, by its number as it stands in its address",
                    input(TrailPart.CASE, filter.about())
                        .with("autocomplete", "off")
                        .with("spellcheck", "false")),
                field("Done by or about", Html.select(TrailPart.PERSON, filter.person(), people)),
                button("Find")),
        filter.equals(Filter.NONE)
            ? nothing()
            : Html.paragraph("").with(Html.link("/trail", "All entries")));
  }
}
