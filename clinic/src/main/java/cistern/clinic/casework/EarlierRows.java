package cistern.clinic.casework;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typable;
import cistern.clinic.form.Typing;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupReading;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import cistern.report.figure.EarlierPuncture;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a row of a case held before: at earlier punctures of the person, and in earlier versions.
 */
final class EarlierRows {

  private static final List<String> COUNTS =
      List.of("bands.csfOnly", "bands.shared", "bands.serumOnly");

  private final CaseContext context;
  private final OpenCase open;
  private final List<OpenCase> punctures;
  private final List<Old> versions;
  private final Typing held;

  /** A version with its content. */
  private record Old(CaseVersion version, Json.Structure file) {}

  EarlierRows(CaseContext context, PageRequest visit, OpenCase open) {
    this.context = context;
    this.open = open;
    this.punctures = new Punctures(context, visit).before(open);
    this.versions =
        context.cases().versions(open.version().caseId()).reversed().stream()
            .filter(v -> v.number() < open.version().number())
            .flatMap(v -> file(v).map(f -> new Old(v, f)).stream())
            .toList();
    this.held = Typing.none(CaseStep.RESULTS, context.medicine().zone());
  }

  /** The earlier punctures as a diagram shows them, numbered from the first. */
  List<EarlierPuncture> punctures() {
    List<EarlierPuncture> numbered = new ArrayList<>();
    for (OpenCase one : punctures) {
      numbered.add(
          new EarlierPuncture(
              Integer.toString(numbered.size() + 1), one.interpretation().findings()));
    }
    return numbered;
  }

  /** What an analyte was, the latest first. */
  List<Node> of(Analyte analyte) {
    return of(
        List.of(Sample.csf(analyte).code(), new Sample(analyte, PairTable.other(analyte)).code()));
  }

  /** What was counted, the latest first. */
  List<Node> ofBands() {
    return of(COUNTS);
  }

  private List<Node> of(List<String> keys) {
    List<Typable> fields = held.fields().stream().filter(f -> keys.contains(f.key())).toList();
    List<Node> lines = new ArrayList<>(versions(fields));
    for (int i = punctures.size(); i > 0; i--) {
      OpenCase one = punctures.get(i - 1);
      String words = words(fields, one.file());
      lines.add(
          Fragment.of(
              Html.text("Puncture " + i + ", " + drawn(one) + ": "),
              Html.text((words.isEmpty() ? "not measured" : words) + " ("),
              Html.link("/cases/" + one.version().caseId(), one.name()),
              Html.text(")")));
    }
    return lines;
  }

  private String drawn(OpenCase one) {
    return one.workup().panel().csf().at().map(context::day).orElse("");
  }

  /** What the row said until a version changed it. */
  private List<Node> versions(List<Typable> fields) {
    List<Node> lines = new ArrayList<>();
    String later = words(fields, open.file());
    for (Old old : versions) {
      String words = words(fields, old.file());
      if (!words.equals(later)) {
        lines.add(
            Html.text(
                "Until version %d, %s: %s"
                    .formatted(
                        old.version().number(),
                        context.shortTime(old.version().at()),
                        words.isEmpty() ? "nothing" : words)));
      }
      later = words;
    }
    return lines;
  }

  private Optional<Json.Structure> file(CaseVersion version) {
    return context.medicine().read(version.workup()) instanceof WorkupReading.Understood read
        ? Optional.of(read.document())
        : Optional.empty();
  }

  private String words(List<Typable> fields, Json.Structure file) {
    return fields.stream()
        .filter(f -> !held.held(f, file).isEmpty())
        .map(f -> f.label() + " " + held.held(f, file))
        .collect(Collectors.joining(", "));
  }
}
