package cistern.exchange.fhir;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The resources of a bundle or of one resource with those it contains, and their references. */
final class Resources {

  private final List<FhirElement> all = new ArrayList<>();
  private final Map<String, FhirElement> byReference = new HashMap<>();
  private final InputProblems problems;

  private Resources(InputProblems problems) {
    this.problems = problems;
  }

  static Resources of(FhirElement root, InputProblems problems) {
    Resources resources = new Resources(problems);
    resources.collect(root, "");
    return resources;
  }

  private void collect(FhirElement root, String base) {
    if (!root.type().equals("Bundle")) {
      take(root, base);
      return;
    }
    for (FhirElement entry : root.all("entry")) {
      String fullUrl = entry.text("fullUrl");
      entry.first("resource").ifPresent(resource -> collect(resource, fullUrl));
    }
  }

  private void take(FhirElement resource, String fullUrl) {
    all.add(resource);
    String id = resource.text("id");
    if (!fullUrl.isEmpty()) {
      note(fullUrl, resource);
    }
    if (!id.isEmpty()) {
      note(resource.type() + "/" + id, resource);
    }
    for (FhirElement inner : resource.all("contained")) {
      all.add(inner);
      String own = inner.text("id");
      if (!own.isEmpty()) {
        note(resource.path() + "#" + own, inner);
      }
    }
  }

  private void note(String reference, FhirElement resource) {
    FhirElement before = byReference.putIfAbsent(reference, resource);
    if (before != null && !before.equals(resource)) {
      problems.add(InputProblem.of(InputTrouble.REFERENCE_TWICE, resource.path(), before.path()));
    }
  }

  /** All resources of a type. */
  List<FhirElement> of(String type) {
    return all.stream().filter(resource -> resource.type().equals(type)).toList();
  }

  /** The resource that an element refers to. */
  Optional<FhirElement> resolve(FhirElement reference) {
    String target = reference.text("reference");
    if (target.isEmpty()) {
      return Optional.empty();
    }
    if (target.startsWith("#")) {
      return Optional.ofNullable(byReference.get(holder(reference) + target));
    }
    return Optional.ofNullable(byReference.get(target)).or(() -> relative(target));
  }

  private Optional<FhirElement> relative(String target) {
    String[] parts = target.split("/", -1);
    int history = List.of(parts).indexOf("_history");
    int end = history > 0 ? history : parts.length;
    return end < 2
        ? Optional.empty()
        : Optional.ofNullable(byReference.get(parts[end - 2] + "/" + parts[end - 1]));
  }

  /** The path of the resource, not itself contained, in which an element stands. */
  private String holder(FhirElement element) {
    return all.stream()
        .map(FhirElement::path)
        .filter(path -> element.path().startsWith(path + ".") || element.path().equals(path))
        .min(java.util.Comparator.comparingInt(String::length))
        .orElse("");
  }
}
