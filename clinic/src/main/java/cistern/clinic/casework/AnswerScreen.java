package cistern.clinic.casework;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Saving;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.springframework.web.servlet.function.ServerResponse;

/** Closing an emergency: the name, the time and the reason are kept in the work-up itself. */
public final class AnswerScreen {

  private static final String ANSWERS = "answers";

  private final CaseContext context;

  private AnswerScreen(CaseContext context) {
    this.context = context;
  }

  /** Answers of a context. */
  public static AnswerScreen of(CaseContext context) {
    return new AnswerScreen(context);
  }

  /** Its route. */
  public List<Route> routes() {
    return List.of(Route.post("/cases/{id}/answer", Permission.WORK_UP, this::answer));
  }

  private ServerResponse answer(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    String path = "/cases/" + open.version().caseId();
    boolean isOpen =
        context.status(open).emergencies().stream()
            .anyMatch(u -> u.code().equals(visit.field("to")));
    if (!isOpen || visit.field("reason").isEmpty()) {
      return Responses.see(path);
    }
    Change change =
        new Change(
            open.version().number(),
            "emergency closed",
            JsonText.of(with(open.file(), reply(visit))),
            visit.account().id());
    return switch (context.cases().save(open.version().caseId(), change)) {
      case Saving.Kept kept -> Responses.see(path);
      // Somebody changed the case a moment before: the answer stands beside that change.
      case Saving.Collided collided -> answer(visit);
    };
  }

  private Json.Structure reply(PageRequest visit) {
    String all = visit.field("reason");
    SequencedMap<String, Json> reply = new LinkedHashMap<>();
    reply.put("to", new Json.Text(visit.field("to")));
    reply.put("by", new Json.Text(visit.account().fullName()));
    reply.put(
        "at", new Json.Text(context.medicine().now().truncatedTo(ChronoUnit.SECONDS).toString()));
    reply.put(
        "reason",
        new Json.Text(all.substring(0, Math.min(all.length(), Setting.REASON_MOST.number()))));
    return new Json.Structure(reply);
  }

  private static Json.Structure with(Json.Structure file, Json.Structure reply) {
    List<Json> answers = new ArrayList<>();
    if (file.members().get(ANSWERS) instanceof Json.Sequence before) {
      answers.addAll(before.items());
    }
    answers.add(reply);
    SequencedMap<String, Json> members = new LinkedHashMap<>(file.members());
    members.put(ANSWERS, new Json.Sequence(answers));
    return new Json.Structure(members);
  }
}
