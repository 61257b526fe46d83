package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.note;

import cistern.bands.BandCounts;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Saving;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.casework.gel.GelForms.Typed;
import cistern.clinic.gel.Gels;
import cistern.clinic.gel.KeptReading;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import cistern.report.markup.Node;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** What people change on the screen of a gel; every change is a new version of the case. */
final class GelChanges {

  /** The members of a work-up's bands that tell what a person made of a reading. */
  private static final List<String> PERSONS =
      List.of(
          "csfOnly", "shared", "serumOnly", "pattern", "confirmedBy", "struck", "added", "ladder");

  private final CaseContext context;
  private final GelScreen screen;

  GelChanges(CaseContext context, GelScreen screen) {
    this.context = context;
    this.screen = screen;
  }

  /** The version that a form was opened on. */
  static long base(PageRequest visit, OpenCase open) {
    String base = visit.field("base");
    return base.matches("\\d{1,9}") ? Long.parseLong(base) : open.version().number();
  }

  /** A picture is kept and read. */
  ServerResponse upload(PageRequest visit) {
    Optional<OpenCase> open = context.open(visit);
    if (open.isEmpty()) {
      return context.troubles().missing(visit);
    }
    Optional<byte[]> bytes = bytes(visit);
    return bytes.isEmpty()
        ? refused(visit, open.get(), GelForms.PICTURE, "Choose the file of the picture.")
        : read(
            visit, open.get(), plan -> context.gels().add(bytes.get(), plan, screen.asker(visit)));
  }

  private static Optional<byte[]> bytes(PageRequest visit) {
    try {
      Part part = visit.request().servletRequest().getPart(GelForms.PICTURE);
      if (part == null || part.getSize() == 0) {
        return Optional.empty();
      }
      try (InputStream in = part.getInputStream()) {
        return Optional.of(in.readAllBytes());
      }
    } catch (IOException | ServletException e) {
      return Optional.empty();
    }
  }

  /** A kept picture is read with other lanes, or this person's pair is chosen. */
  ServerResponse take(PageRequest visit) {
    Optional<OpenCase> open = context.open(visit);
    Optional<byte[]> bytes = context.gels().bytes(visit.field(GelForms.PICTURE));
    if (open.isEmpty() || bytes.isEmpty()) {
      return context.troubles().missing(visit);
    }
    return read(
        visit, open.get(), plan -> context.gels().add(bytes.get(), plan, screen.asker(visit)));
  }

  /** A reading under a plan. */
  private interface Read {
    KeptReading with(LanePlan plan) throws IOException;
  }

  private ServerResponse read(PageRequest visit, OpenCase open, Read read) {
    LanePlan plan;
    try {
      String lanes = visit.field(GelForms.LANES);
      plan = lanes.isEmpty() ? LanePlan.NONE : LanePlan.parse(lanes);
    } catch (IllegalArgumentException e) {
      return refused(visit, open, GelForms.LANES, sentence(e));
    }
    try {
      return paired(visit, open, read.with(plan));
    } catch (IOException e) {
      return refused(visit, open, GelForms.PICTURE, sentence(e));
    }
  }

  /** A sentence of the reader; of the machine's own troubles nothing is told on. */
  private static String sentence(Exception trouble) {
    String told = String.valueOf(trouble.getMessage());
    boolean isOurs =
        trouble instanceof cistern.gel.image.UnreadablePicture
            || trouble instanceof IllegalArgumentException;
    return isOurs
        ? told.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + told.substring(1) + "."
        : "The picture could not be read here; nothing was changed.";
  }

  private ServerResponse refused(PageRequest visit, OpenCase open, String field, String sentence) {
    Typed typed =
        Typed.of(visit.field(GelForms.LANES), visit.field(GelForms.PAIR))
            .withTrouble(field, sentence);
    Node said = note("trouble", "Nothing was changed: see beside the field.").with("role", "alert");
    return Responses.page(HttpStatus.UNPROCESSABLE_CONTENT, screen.html(visit, open, said, typed));
  }

  private ServerResponse paired(PageRequest visit, OpenCase open, KeptReading kept) {
    GelReading reading = Gels.read(kept, context.medicine().facts());
    String typed = visit.field(GelForms.PAIR);
    List<Integer> pairs = reading.pairs().stream().map(PairReading::pair).toList();
    if (typed.isEmpty() && pairs.size() > 1) {
      return Responses.page(screen.toChoose(visit, open, kept));
    }
    String chosen = typed.isEmpty() && pairs.size() == 1 ? pairs.getFirst().toString() : typed;
    if (pairs.stream().noneMatch(p -> p.toString().equals(chosen))) {
      return refused(
          visit,
          open,
          pairs.isEmpty() ? GelForms.PICTURE : GelForms.PAIR,
          pairs.isEmpty()
              ? "No pair of lanes was found in this picture: name its lanes, or send another."
              : "The pairs are "
                  + String.join(", ", pairs.stream().map(String::valueOf).toList())
                  + ".");
    }
    return keep(visit, open, "gel read", named(open, kept, chosen));
  }

  /** The bands with another gel: what a person made of an earlier one is about that one. */
  private Map<String, Optional<Json>> named(OpenCase open, KeptReading kept, String pair) {
    Map<String, Optional<Json>> members = new TreeMap<>();
    if (GelCase.of(open, context).isPresent()) {
      PERSONS.forEach(name -> members.put(name, Optional.empty()));
    }
    members.put("confirmedBy", Optional.empty());
    members.put("gel", Optional.of(new Json.Text(kept.picture())));
    members.put("pair", Optional.of(new Json.Numeral(pair)));
    members.put(
        "lanes",
        kept.plan().isNone() ? Optional.empty() : Optional.of(BandsMember.lanes(kept.plan())));
    return members;
  }

  private ServerResponse keep(
      PageRequest visit, OpenCase open, String step, Map<String, Optional<Json>> members) {
    String workup = JsonText.of(BandsMember.with(open.file(), members));
    CaseVersion current = open.version();
    Change change = new Change(current.number(), step, workup, visit.account().id());
    return switch (context.cases().save(current.caseId(), change)) {
      case Saving.Kept kept -> {
        screen.dropDraft(visit);
        yield Responses.see("/cases/" + current.caseId() + "/gel");
      }
      case Saving.Collided collided ->
          Responses.page(
              HttpStatus.CONFLICT,
              screen.html(visit, open, meanwhile(collided.current()), Typed.of("", "")));
    };
  }

  private Node meanwhile(CaseVersion now) {
    return note(
            "trouble",
            context.accounts().fullName(now.account())
                + " changed this case meanwhile. Nothing of yours is saved yet, and nothing of"
                + " theirs is lost: look at what stands now, then do it again.")
        .with("role", "alert");
  }

  /** Bands kept and struck, not yet confirmed. */
  ServerResponse save(PageRequest visit) {
    return edited(visit, "bands kept, struck or drawn", this::unconfirmed);
  }

  /** The reading as it is kept, confirmed by the person's name. */
  ServerResponse confirm(PageRequest visit) {
    return edited(visit, "gel confirmed", (gel, edit) -> confirmed(gel, edit, visit));
  }

  /** What a form makes of the bands of a work-up. */
  private interface Making {
    Map<String, Optional<Json>> of(GelCase gel, GelEdit edit);
  }

  private ServerResponse edited(PageRequest visit, String step, Making making) {
    Optional<GelCase> found = screen.sent(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.get();
    GelEdit edit = tidy(gel, screen.typed(visit, gel));
    if (!screen.isSameGel(gel, base(visit, gel.open()))) {
      return conflict(visit, gel);
    }
    Optional<LanesTyped> unread = unread(visit, gel);
    if (unread.isPresent()) {
      return unread(visit, gel, unread.get(), "Nothing was saved: lanes are typed that were not");
    }
    if (gel.isSaved()) {
      return keep(visit, gel.open(), step, making.of(gel, edit));
    }
    if (gel.bandsKept(edit).isEmpty()) {
      return context.troubles().missing(visit);
    }
    Map<String, Optional<Json>> members =
        named(gel.open(), gel.kept(), Integer.toString(gel.named().pair()));
    members.putAll(making.of(gel, edit));
    return keep(visit, gel.open(), step + ", lanes placed by hand", members);
  }

  private static Optional<LanesTyped> unread(PageRequest visit, GelCase gel) {
    return LanesTyped.unread(visit.fields(), LanesTyped.of(gel.reading(), gel.named().pair()));
  }

  /** Lanes that were typed and not read are neither saved nor lost. */
  private ServerResponse unread(PageRequest visit, GelCase gel, LanesTyped typed, String said) {
    return Responses.page(
        HttpStatus.UNPROCESSABLE_CONTENT,
        screen.html(
            visit,
            screen.sentBack(visit, gel).with(typed),
            note("trouble", said + " read yet. Read them first, or put the fields back.")
                .with("role", "alert")));
  }

  /** All that was typed stays: of the lanes also what was not read yet. */
  ServerResponse conflict(PageRequest visit, GelCase gel) {
    GelScreen.Shown sent = screen.sentBack(visit, gel);
    return Responses.page(
        HttpStatus.CONFLICT,
        screen.html(
            visit,
            unread(visit, gel).map(sent::with).orElse(sent),
            meanwhile(gel.open().version())));
  }

  /** An added band that was struck is taken away: no reading holds it. */
  static GelEdit tidy(GelCase gel, GelEdit edit) {
    return gel.bandsKept(edit).map(bands -> bands.withoutStruck(edit)).orElse(edit);
  }

  /** A band that the reader missed, drawn into the form; nothing of the case is changed yet. */
  ServerResponse draw(PageRequest visit) {
    Optional<GelCase> found = screen.sent(visit);
    Optional<GelEdit> typed = found.map(gel -> tidy(gel, screen.typed(visit, gel)));
    Optional<EditedPair> bands = found.flatMap(gel -> gel.bandsKept(typed.orElseThrow()));
    if (bands.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.orElseThrow();
    GelEdit edit = typed.orElseThrow();
    DrawnPlace drawn =
        DrawnPlace.of(visit, bands.get(), bands.get().window(gel.reading()))
            .within(Setting.BANDS_ADDED.number(), edit.added().size());
    if (!screen.isSameGel(gel, base(visit, gel.open()))) {
      return conflict(visit, gel);
    }
    Optional<LanesTyped> unread = unread(visit, gel);
    if (unread.isPresent()) {
      return unread(visit, gel, unread.get(), "No band was drawn: lanes are typed that were not");
    }
    if (!drawn.troubles().isEmpty()) {
      Node said = note("trouble", "No band was drawn: see beside the field.").with("role", "alert");
      return Responses.page(
          HttpStatus.UNPROCESSABLE_CONTENT,
          screen.html(visit, GelScreen.Shown.of(gel, edit).with(drawn), said));
    }
    return drawn(visit, gel, edit, drawn.bands(visit.account().fullName()));
  }

  /** The draft with more bands, shown at the last of them. */
  private ServerResponse drawn(PageRequest visit, GelCase gel, GelEdit edit, List<AddedBand> more) {
    GelEdit all = edit;
    for (AddedBand band : more) {
      all = all.with(band);
    }
    EditedPair bands = gel.bandsKept(all).orElseThrow();
    screen.keepDraft(visit, gel.open().version().number(), GelTyping.of(gel, all));
    String at =
        bands.places().isEmpty()
            ? ""
            : "#keep-"
                + GelEdit.key(bands.places().getLast().lane(), bands.places().getLast().band());
    return Responses.see(gel.path() + at);
  }

  private Map<String, Optional<Json>> unconfirmed(GelCase gel, GelEdit edit) {
    Map<String, Optional<Json>> members = new TreeMap<>(edit.toMembers());
    if (gel.named().confirmedBy().isPresent()) {
      PERSONS.forEach(name -> members.putIfAbsent(name, Optional.empty()));
    }
    return members;
  }

  /** Counts that differ from what was read are the person's own and win. */
  private Map<String, Optional<Json>> confirmed(GelCase gel, GelEdit edit, PageRequest visit) {
    Map<String, Optional<Json>> members = new TreeMap<>(edit.toMembers());
    Optional<BandCounts> own =
        gel.isPatterned() && !gel.isAsRead(edit)
            ? gel.bandsKept(edit).map(b -> b.bands().counts())
            : Optional.empty();
    members.put("csfOnly", own.flatMap(c -> BandsMember.count(c.csfOnly())));
    members.put("shared", own.flatMap(c -> BandsMember.count(c.shared())));
    members.put("serumOnly", own.flatMap(c -> BandsMember.count(c.serumOnly())));
    members.put(
        "pattern",
        own.isPresent() && edit.isLadder() ? Optional.of(new Json.Numeral("5")) : Optional.empty());
    members.put("confirmedBy", Optional.of(new Json.Text(visit.account().fullName())));
    return members;
  }
}
