package cistern.exchange.workup;

import cistern.bands.BandReport;
import cistern.exchange.clinical.ClinicalReader;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.NumberRange;
import cistern.exchange.procedure.ProcedureFields;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.workup.WorkupReading.NotValid;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.interpretation.Workup;
import cistern.interpretation.Workup.Letter;
import cistern.interpretation.Workup.Remarks;
import cistern.panel.Panel;
import cistern.puncture.procedure.Procedure;
import cistern.weighing.ClinicalPicture;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads work-up files, version 1 and 2: every file of the first is one of the second. */
public final class WorkupFile {

  private static final List<BigDecimal> VERSIONS = List.of(BigDecimal.ONE, BigDecimal.TWO);
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9._-]{1,64}");

  private final InputLimits limits;
  private final PanelReader panels;
  private final BandsReader bands;
  private final ProcedureFields procedures;

  private WorkupFile(Facts facts) {
    limits = InputLimits.of(facts);
    Conversions conversions = Conversions.of(facts);
    panels = new PanelReader(conversions);
    procedures = ProcedureFields.of(conversions);
    bands = new BandsReader(facts);
  }

  /** A reader under some facts, which hold the molar masses. */
  public static WorkupFile of(Facts facts) {
    return new WorkupFile(facts);
  }

  /** Reads a file. */
  public WorkupReading read(Path file) {
    InputProblems problems = new InputProblems();
    return read(JsonDocument.read(file, limits, problems), problems);
  }

  /** Reads a stream to its end. */
  public WorkupReading read(InputStream in) {
    InputProblems problems = new InputProblems();
    return read(JsonDocument.read(in, limits, problems), problems);
  }

  /**
   * Judges a work-up that is already a tree: read from a file, or made from a laboratory's report.
   *
   * @param document the whole work-up
   * @param problems what reading it noted before
   */
  public WorkupReading read(Json.Structure document, InputProblems problems) {
    return read(Optional.of(document), problems);
  }

  private WorkupReading read(Optional<Json.Structure> document, InputProblems problems) {
    Optional<Workup> workup =
        document.map(whole -> workup(Fields.of(whole, limits, problems), problems));
    return workup.isPresent() && problems.isValid()
        ? new Understood(workup.get(), document.orElseThrow())
        : new NotValid(problems.invalid());
  }

  private Workup workup(Fields fields, InputProblems problems) {
    version(fields, "workup", VERSIONS);
    String id = id(fields);
    Remarks remarks =
        new Remarks(
            fields.truth("invented").orElse(false),
            fields.text("question"),
            letter(fields),
            fields.text("laboratory").filter(name -> !name.isBlank()));
    Stream.of("note", "clinician").forEach(fields::text);
    fields.truth("deidentified");
    fields.keep("finalDiagnosis", "source");
    bands.read(fields, BandsReader.SECOND);
    LeftOverReader.read(fields);
    Panel panel = panels.read(fields);
    Procedure procedure = procedures.read(fields);
    BandReport report = bands.read(fields);
    ClinicalPicture clinical = ClinicalReader.read(fields);
    fields.checkNoOthers();
    return SaidTwice.merge(
        new Workup(id, remarks, panel, report, clinical, procedure, List.of()), problems);
  }

  private static Letter letter(Fields workup) {
    Optional<Fields> given = workup.object("letter");
    Letter letter =
        given
            .map(
                fields ->
                    new Letter(
                        fields.text("to"),
                        fields.text("salutation"),
                        fields.text("conclusion"),
                        fields.text("by"),
                        fields.answer("releaseProbability")))
            .orElse(Letter.UNKNOWN);
    given.ifPresent(Fields::checkNoOthers);
    return letter;
  }

  private static String id(Fields fields) {
    fields.checkGiven("id");
    Optional<String> id = fields.text("id");
    if (id.isPresent() && !ID.matcher(id.get()).matches()) {
      fields.add(
          "id", InputTrouble.ILL_FORMED, "1 to 64 letters, digits, points, underscores or hyphens");
    }
    return id.orElse("");
  }

  /** Notes another version than the one that is read here, which a file need not name. */
  static void version(Fields fields, String name, List<BigDecimal> versions) {
    Optional<BigDecimal> given = fields.decimal(name, NumberRange.ANY);
    if (given.isPresent() && versions.stream().noneMatch(v -> v.compareTo(given.get()) == 0)) {
      fields.add(
          name,
          InputTrouble.VERSION,
          versions.stream().map(BigDecimal::toPlainString).collect(Collectors.joining(" and ")));
    }
  }
}
