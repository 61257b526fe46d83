package cistern.clinic.casework;

import cistern.clinic.status.Medicine;
import cistern.fact.Fact;
import cistern.puncture.drug.DrugEntry;
import cistern.puncture.drug.TypedDrug;
import cistern.report.markup.Element;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** What is said beside the name of a drug, so that a name that is not known is never silent. */
final class DrugHint {

  /** The list of known names, for fields that complete what is typed. */
  static final String LIST = "known-drugs";

  private DrugHint() {}

  /** What is made of a typed name; empty for none. */
  static String of(String typed, Medicine medicine) {
    return typed.isBlank()
        ? ""
        : medicine.drugs().parse(typed).stream()
            .map(DrugHint::words)
            .collect(Collectors.joining(" "));
  }

  private static String words(TypedDrug drug) {
    if (drug.entry().isEmpty()) {
      String near =
          drug.nearest().isEmpty()
              ? " Ask what it is."
              : " Did you mean " + String.join(", or ", drug.nearest()) + "?";
      return "“" + drug.typed() + "” is not known here: no interval is given for it." + near;
    }
    DrugEntry entry = drug.entry().get();
    String note = entry.note().isEmpty() ? "" : " " + entry.note();
    return switch (entry.kind()) {
      case TAKEN, COMBINATION -> "Read as " + entry.name() + ", " + entry.drugClass() + "." + note;
      case CLASS -> "Only the class is named: ask which drug it is." + note;
      case ASKS -> "Read as " + entry.name() + ": ask the prescriber." + note;
      case NOTED -> "Read as " + entry.name() + "." + note;
      case NOT -> "Read as " + entry.name() + ", no antithrombotic." + note;
    };
  }

  /** The names that complete what is typed. */
  static Element list(Medicine medicine) {
    List<Element> options =
        medicine.facts().all().stream()
            .filter(f -> f.key().startsWith("drug.") && f.key().endsWith(".names"))
            .map(DrugHint::names)
            .flatMap(List::stream)
            .distinct()
            .map(name -> Element.of("option").with("value", name))
            .toList();
    return Element.of("datalist").with("id", LIST).with(options);
  }

  private static List<String> names(Fact fact) {
    return Arrays.asList(fact.value().toText().split(", ", -1));
  }
}
