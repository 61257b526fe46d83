package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.note;

import cistern.clinic.casework.CaseContext;
import cistern.clinic.gel.KeptReading;
import cistern.clinic.setting.Setting;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.gel.image.Posture;
import cistern.gel.reading.GelReading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * Lanes that a person places, names and pairs otherwise. The picture is read again at once and the
 * reading kept; the case changes only when the person saves or confirms it.
 */
final class LaneChanges {

  private final CaseContext context;
  private final GelScreen screen;
  private final GelChanges changes;

  LaneChanges(CaseContext context, GelScreen screen, GelChanges changes) {
    this.context = context;
    this.screen = screen;
    this.changes = changes;
  }

  /** The picture is read with the lanes as they were placed. */
  ServerResponse place(PageRequest visit) {
    Optional<GelCase> found = screen.sent(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.get();
    if (isOther(visit, gel)) {
      return conflict(visit, gel);
    }
    LanesTyped typed = LanesTyped.of(visit.fields(), pixels(gel.reading()));
    return typed
        .placement()
        .map(placement -> placed(visit, gel, with(gel, placement)))
        .orElseGet(() -> refused(visit, gel, typed));
  }

  /** The columns of the upright picture. */
  private static double pixels(GelReading reading) {
    boolean isAcross = reading.picture().posture() == Posture.ACROSS;
    return isAcross ? reading.picture().height() : reading.picture().width();
  }

  /** Read with the lanes as placed last; the longest ago placed are forgotten. */
  private static List<Placement> with(GelCase gel, Placement placement) {
    List<Placement> all = new ArrayList<>(gel.placed());
    all.add(placement);
    int most = Setting.PLACINGS_KEPT.number();
    return all.subList(Math.max(0, all.size() - most), all.size());
  }

  private ServerResponse placed(PageRequest visit, GelCase gel, List<Placement> all) {
    read(visit, gel, all.getLast());
    GelCase now = gel.with(all, context).orElseThrow();
    return kept(visit, gel, now);
  }

  private KeptReading read(PageRequest visit, GelCase gel, Placement placement) {
    byte[] bytes = context.gels().bytes(gel.kept().picture()).orElseThrow();
    try {
      return context.gels().add(bytes, placement.plan(), screen.asker(visit));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The last placing is undone; the reading before it is kept, and is shown again. */
  ServerResponse back(PageRequest visit) {
    Optional<GelCase> found = screen.sent(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.get();
    if (isOther(visit, gel)) {
      return conflict(visit, gel);
    }
    List<Placement> placed = gel.placed();
    List<Placement> before = placed.subList(0, Math.max(0, placed.size() - 1));
    GelCase now =
        GelCase.of(gel.open(), context).flatMap(saved -> saved.with(before, context)).orElse(gel);
    return kept(visit, gel, now);
  }

  private ServerResponse kept(PageRequest visit, GelCase gel, GelCase now) {
    GelEdit typed = GelChanges.tidy(gel, GelScreen.typed(visit, gel));
    boolean isLost = now.isSaved() && gel.bandsKept(typed).isEmpty();
    GelEdit edit = isLost ? now.edit() : CarriedEdit.of(gel, typed, now);
    if (now.isSaved() && edit.equals(now.edit())) {
      screen.dropDraft(visit);
    } else {
      screen.keepDraft(visit, GelChanges.base(visit, gel.open()), GelTyping.of(now, edit));
    }
    return Responses.see(gel.path() + "#whole");
  }

  /** Whether somebody has changed the bands since the form was opened. */
  private boolean isOther(PageRequest visit, GelCase gel) {
    return !screen.isSameGel(gel, GelChanges.base(visit, gel.open()));
  }

  private ServerResponse conflict(PageRequest visit, GelCase gel) {
    return changes.conflict(visit, gel, GelScreen.typed(visit, gel));
  }

  private ServerResponse refused(PageRequest visit, GelCase gel, LanesTyped typed) {
    GelEdit edit = GelScreen.typed(visit, gel);
    return Responses.page(
        HttpStatus.UNPROCESSABLE_CONTENT,
        screen.html(
            visit,
            GelScreen.Shown.of(gel, edit).with(typed),
            note("trouble", "The gel was not read again: see beside the field.")
                .with("role", "alert")));
  }
}
