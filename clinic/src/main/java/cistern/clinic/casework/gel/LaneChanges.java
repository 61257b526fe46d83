package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.note;

import cistern.clinic.casework.CaseContext;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.PairReading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;
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
    return changed(
        visit,
        (form, gel) -> {
          LanesTyped typed = LanesTyped.of(visit.fields(), gel.reading());
          return typed
              .placement(form.across())
              .map(placement -> placed(visit, gel, form, placement))
              .orElseGet(() -> refused(visit, gel, typed));
        });
  }

  /** The last placing is undone: the reading before it is shown again, and what stood with it. */
  ServerResponse back(PageRequest visit) {
    return changed(
        visit,
        (form, gel) -> {
          List<Placement> done = gel.placings().done();
          return done.isEmpty()
              ? Responses.see(gel.path())
              : shown(visit, gel, done.getLast(), gel.placings().back(form.across()));
        });
  }

  /** The placing that was undone last is done again, and what stood with it. */
  ServerResponse forth(PageRequest visit) {
    return changed(
        visit,
        (form, gel) -> {
          List<Placement> undone = gel.placings().undone();
          return undone.isEmpty()
              ? Responses.see(gel.path())
              : shown(visit, gel, undone.getLast(), gel.placings().forth(form.across()));
        });
  }

  /** What is made of a form, unless somebody has changed the bands since it was opened. */
  private ServerResponse changed(
      PageRequest visit, BiFunction<GelTyping, GelCase, ServerResponse> change) {
    Optional<GelCase> found = screen.sent(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.get();
    return screen.isSameGel(gel, GelChanges.base(visit, gel.open()))
        ? change.apply(GelTyping.of(visit.fields()), gel)
        : changes.conflict(visit, gel);
  }

  private ServerResponse placed(
      PageRequest visit, GelCase gel, GelTyping form, Placement placement) {
    byte[] bytes = context.gels().bytes(gel.kept().picture()).orElseThrow();
    try {
      context.gels().add(bytes, placement.plan(), screen.asker(visit));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    GelCase now = gel.with(gel.placings().with(placement), context).orElseThrow();
    GelTyping typed = GelTyping.of(now, carried(visit, gel, form, now));
    return kept(visit, gel, typed.withMissed(moved(form.missed(), gel, now)));
  }

  /** What a person made of the pair, as it stood when both of its lanes were last found. */
  private GelEdit carried(PageRequest visit, GelCase gel, GelTyping form, GelCase now) {
    GelEdit edit = screen.edit(visit, gel, form);
    List<Placement> done = gel.placings().done();
    if (gel.bandsKept(edit).isPresent() || done.isEmpty()) {
      return CarriedEdit.of(gel, GelChanges.tidy(gel, edit), now);
    }
    GelTyping before = GelTyping.parse(done.getLast().across());
    Placings earlier = new Placings(done.subList(0, done.size() - 1), List.of());
    return saved(gel, earlier).map(g -> carried(visit, g, before, now)).orElse(edit);
  }

  private Optional<GelCase> saved(GelCase gel, Placings placings) {
    return GelCase.of(gel.open(), context).flatMap(saved -> saved.with(placings, context));
  }

  /** Places that are typed and not drawn yet follow the lane of their fluid, as drawn ones do. */
  private static Map<String, String> moved(Map<String, String> missed, GelCase gel, GelCase now) {
    Optional<PairReading> old = gel.pair();
    Optional<PairReading> next = now.pair();
    if (old.isEmpty() || next.isEmpty()) {
      return missed;
    }
    Map<String, String> moved = new HashMap<>();
    lane(gel, old.get().csfLane())
        .ifPresent(from -> move(missed, from, lane(now, next.get().csfLane()), moved));
    lane(gel, old.get().serumLane())
        .ifPresent(from -> move(missed, from, lane(now, next.get().serumLane()), moved));
    return moved;
  }

  private static Optional<LaneReading> lane(GelCase gel, OptionalInt index) {
    return index.isPresent()
        ? Optional.of(gel.reading().lanes().get(index.getAsInt()))
        : Optional.empty();
  }

  private static void move(
      Map<String, String> missed,
      LaneReading from,
      Optional<LaneReading> to,
      Map<String, String> moved) {
    String typed = missed.get(DrawnPlace.field(from.index()));
    if (typed != null) {
      to.filter(lane -> CarriedEdit.isSame(from, lane))
          .ifPresent(lane -> moved.put(DrawnPlace.field(lane.index()), typed));
    }
  }

  /** The form as it stood on the other side of a step. */
  private ServerResponse shown(PageRequest visit, GelCase gel, Placement step, Placings placings) {
    return kept(visit, gel, GelTyping.parse(step.across()).with(placings));
  }

  private ServerResponse kept(PageRequest visit, GelCase gel, GelTyping typed) {
    screen.keepDraft(visit, GelChanges.base(visit, gel.open()), typed);
    return Responses.see(gel.path() + "#whole");
  }

  private ServerResponse refused(PageRequest visit, GelCase gel, LanesTyped typed) {
    return Responses.page(
        HttpStatus.UNPROCESSABLE_CONTENT,
        screen.html(
            visit,
            screen.sentBack(visit, gel).with(typed),
            note("trouble", "The gel was not read again: see beside the field.")
                .with("role", "alert")));
  }
}
