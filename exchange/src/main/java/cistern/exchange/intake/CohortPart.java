package cistern.exchange.intake;

import cistern.exchange.json.InputProblem;
import cistern.exchange.workup.WorkupReading;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A part of a file with many work-ups: one line with a work-up or a FHIR resource, or some rows of
 * a table under its headings.
 *
 * @param place the file, with the line where the part holds one work-up
 * @param text of the part, with the headings of the table before it
 * @param rowsBefore how many rows of the table stand before the part; 0 for a line
 */
public record CohortPart(String place, String text, long rowsBefore) {

  private static final Pattern ROW = Pattern.compile("^row (\\d+)");

  /** Reads it; the rows that problems name are those of the file. */
  public void read(Intake intake, Consumer<WorkupReading> readings) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    intake.read(new ByteArrayInputStream(bytes), reading -> readings.accept(placed(reading)));
  }

  private WorkupReading placed(WorkupReading reading) {
    return switch (reading) {
      case WorkupReading.Understood understood -> understood;
      case WorkupReading.NotValid notValid ->
          new WorkupReading.NotValid(
              notValid.problems().stream().map(p -> placed(p, rowsBefore)).toList());
    };
  }

  /** A problem of a part with the row that it has in the whole. */
  public static InputProblem placed(InputProblem problem, long rowsBefore) {
    Matcher row = ROW.matcher(problem.place());
    String place =
        row.find()
            ? "row "
                + (Long.parseLong(row.group(1)) + rowsBefore)
                + problem.place().substring(row.end())
            : problem.place();
    return new InputProblem(problem.trouble(), place, problem.text());
  }
}
