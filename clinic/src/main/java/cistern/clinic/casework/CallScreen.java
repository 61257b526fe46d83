package cistern.clinic.casework;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Saving;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typing;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.JsonText;
import cistern.puncture.procedure.WarningSign;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.web.servlet.function.ServerResponse;

/** What a call after the puncture found, from wherever its questions were asked. */
public final class CallScreen {

  private static final String HEADACHE = "procedure.after.headache.";

  private final CaseContext context;

  private CallScreen(CaseContext context) {
    this.context = context;
  }

  /** Calls of a context. */
  public static CallScreen of(CaseContext context) {
    return new CallScreen(context);
  }

  /** Its route. */
  public List<Route> routes() {
    return List.of(Route.post("/cases/{id}/call", Permission.CARE_AFTER, this::save));
  }

  private ServerResponse save(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    Typing typing = Typing.of(CaseStep.AFTER, typed(visit), context.medicine().zone());
    if (typing.isUnchanged(open.file())) {
      return Responses.see("/cases/" + open.version().caseId());
    }
    Change change =
        new Change(
            open.version().number(),
            CaseStep.AFTER.word(),
            JsonText.of(typing.applied(open.file(), open.file())),
            visit.account().id());
    return switch (context.cases().save(open.version().caseId(), change)) {
      case Saving.Kept kept -> {
        boolean isUrgent =
            !context.status(context.recent().open(kept.version())).emergencies().isEmpty();
        yield Responses.see(isUrgent ? "/cases/" + kept.version().caseId() : "/day");
      }
      case Saving.Collided collided -> save(visit);
    };
  }

  private static Map<String, String> typed(PageRequest visit) {
    boolean isAll = visit.field(CallForm.ASKED).equals("all");
    List<String> there = visit.fields().getOrDefault(CallForm.SIGN, List.of());
    Map<String, String> typed = new TreeMap<>();
    note(typed, "present", visit.field(CallForm.HEADACHE).equals("yes"), isAll);
    for (WarningSign sign : WarningSign.values()) {
      note(typed, "redFlags." + sign.field(), there.contains(sign.field()), isAll);
    }
    return typed;
  }

  private static void note(Map<String, String> typed, String key, boolean isThere, boolean isAll) {
    if (isThere || isAll) {
      typed.put(HEADACHE + key, isThere ? "yes" : "no");
    }
  }
}
