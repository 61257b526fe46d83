package cistern.clinic.form;

import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.QuestionGroup;
import cistern.puncture.procedure.WarningSign;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** The fields of every step: a table, the yes-or-no questions of the plan, and the results. */
final class StepFields {

  private static final List<String[]> ROWS = rows("fields.tsv");

  private StepFields() {}

  static List<Typable> of(CaseStep step) {
    List<Typable> fields = new ArrayList<>();
    if (step == CaseStep.RESULTS) {
      Arrays.stream(Analyte.values())
          .sorted(Comparator.comparing(Analyte::family))
          .forEach(analyte -> samples(analyte).map(ResultField::new).forEach(fields::add));
    }
    ROWS.stream().filter(r -> r[0].equals(step.word())).forEach(r -> fields.addAll(row(r)));
    return fields;
  }

  private static Stream<Sample> samples(Analyte analyte) {
    Compartment other =
        switch (analyte.family()) {
          case PROTEIN, IMMUNOGLOBULIN, LIGHT_CHAIN, METABOLITE, SPECIFIC_ANTIBODY ->
              Compartment.SERUM;
          case CELLS, FRACTION -> Compartment.BLOOD;
        };
    return Stream.of(Compartment.CSF, other).map(in -> new Sample(analyte, in));
  }

  /** One row: a field, or all questions of a group. */
  private static List<FormField> row(String[] cells) {
    Optional<String> section = Optional.of(cells[1]).filter(s -> !s.isEmpty());
    String path = cells[3];
    if (path.startsWith("@")) {
      return questions(cells[2], path.substring(1));
    }
    FieldKind kind = FieldKind.valueOf(cells[4].toUpperCase(Locale.ROOT));
    List<String> choices = cells[6].isEmpty() ? List.of() : List.of(cells[6].split(" ", -1));
    return List.of(new FormField(section, cells[2], JsonPath.parse(path), kind, cells[5], choices));
  }

  private static List<FormField> questions(String group, String name) {
    if (name.equals("RED_FLAGS")) {
      return Arrays.stream(WarningSign.values())
          .map(f -> question(group, "procedure.after.headache.redFlags." + f.field(), f.question()))
          .toList();
    }
    QuestionGroup asked = QuestionGroup.valueOf(name);
    return Question.of(asked).stream()
        .map(
            q -> question(group, "procedure." + asked.path() + "." + q.field(), sentence(q.term())))
        .toList();
  }

  private static FormField question(String group, String path, String label) {
    return new FormField(
        Optional.empty(), group, JsonPath.parse(path), FieldKind.ANSWER, label, List.of());
  }

  private static String sentence(String term) {
    return Character.isUpperCase(term.charAt(1))
        ? term
        : term.substring(0, 1).toUpperCase(Locale.ROOT) + term.substring(1);
  }

  /** The rows of a table beside this class, without its head. */
  static List<String[]> rows(String table) {
    try (InputStream in = Objects.requireNonNull(StepFields.class.getResourceAsStream(table));
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().skip(1).map(line -> line.split("\t", -1)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
