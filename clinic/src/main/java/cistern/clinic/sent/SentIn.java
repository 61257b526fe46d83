package cistern.clinic.sent;

import cistern.clinic.status.Medicine;
import cistern.clinic.web.PageRequest;
import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputProblem;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/**
 * A message, a bundle, a table or a printed report, read; nothing of it is in any case yet.
 *
 * @param content as it came; read only
 * @param understood one work-up for each puncture in it
 * @param problems why nothing, or not all, can be read
 */
@SuppressWarnings("ArrayRecordComponent")
public record SentIn(
    byte[] content, List<WorkupReading.Understood> understood, List<InputProblem> problems) {

  /** Copies the lists. */
  public SentIn {
    understood = List.copyOf(understood);
    problems = List.copyOf(problems);
  }

  /** Reads what was sent. */
  public static SentIn read(byte[] content, Medicine medicine) {
    List<WorkupReading.Understood> understood = new ArrayList<>();
    List<InputProblem> problems = new ArrayList<>();
    Intake.of(medicine.facts(), LocalMapping.NONE.in(medicine.zone()))
        .read(
            new ByteArrayInputStream(content),
            reading -> {
              switch (reading) {
                case WorkupReading.Understood one -> understood.add(one);
                case WorkupReading.NotValid notValid -> problems.addAll(notValid.problems());
              }
            });
    return new SentIn(content, understood, problems);
  }

  /** What a visit brings: a file, what an earlier preview carried, or the text of a field. */
  public static byte[] content(PageRequest visit, String text) {
    String carried = visit.field(SentPage.SENT);
    return visit
        .file(SentPage.SENT)
        .orElseGet(
            () -> carried.isEmpty() ? text.getBytes(StandardCharsets.UTF_8) : fromField(carried));
  }

  /** The content as a field of a form carries it. */
  public String toField() {
    return Base64.getEncoder().encodeToString(content);
  }

  /** The content of such a field; the bytes of the text where it is none. */
  public static byte[] fromField(String field) {
    try {
      return Base64.getDecoder().decode(field);
    } catch (IllegalArgumentException e) {
      return field.getBytes(StandardCharsets.UTF_8);
    }
  }
}
