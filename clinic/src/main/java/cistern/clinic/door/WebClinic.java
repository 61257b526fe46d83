package cistern.clinic.door;

import cistern.clinic.account.Accounts;
import cistern.clinic.account.Chance;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.cases.Cases;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Reports;
import cistern.clinic.casework.CaseScreen;
import cistern.clinic.casework.CompareScreen;
import cistern.clinic.casework.Desk;
import cistern.clinic.casework.PasteScreen;
import cistern.clinic.casework.ReportScreen;
import cistern.clinic.casework.SaysScreen;
import cistern.clinic.casework.StepScreen;
import cistern.clinic.casework.UnreadableScreen;
import cistern.clinic.casework.gel.GelScreen;
import cistern.clinic.entrance.Entrance;
import cistern.clinic.facts.FactsScreen;
import cistern.clinic.gel.Gels;
import cistern.clinic.setting.Setting;
import cistern.clinic.staff.Staff;
import cistern.clinic.standing.Medicine;
import cistern.clinic.standing.RecentCases;
import cistern.clinic.standing.Rules;
import cistern.clinic.standing.Summaries;
import cistern.clinic.store.Store;
import cistern.clinic.trail.Trail;
import cistern.clinic.web.Assets;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Gateway;
import cistern.clinic.web.Guard;
import cistern.clinic.web.Route;
import cistern.clinic.web.Routes;
import cistern.clinic.web.Troubles;
import cistern.clinic.worklist.Worklist;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.boot.Banner;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;

/** The running web application on one open store. */
final class WebClinic implements AutoCloseable {

  private final PassingFolder scratch;
  private final ConfigurableApplicationContext context;
  private final Accounts accounts;
  private final OneTimeCodes codes;
  private final Desk desk;
  private final Routes routes;

  private WebClinic(
      PassingFolder scratch,
      ConfigurableApplicationContext context,
      Parts parts,
      Desk desk,
      Routes routes) {
    this.scratch = scratch;
    this.context = context;
    this.accounts = parts.accounts();
    this.codes = parts.codes();
    this.desk = desk;
    this.routes = routes;
  }

  /**
   * Where and how it is served.
   *
   * @param address on which it listens
   * @param port 0 for any that is free
   * @param isInvented whether every case is invented
   * @param rules what holds for every case
   * @param gateway the server that speaks HTTPS and stands before it, if one does
   */
  record Serving(
      String address, int port, boolean isInvented, Rules rules, Optional<Gateway> gateway) {}

  /** What stands on the store. */
  private record Parts(
      Store store,
      AuditTrail trail,
      Accounts accounts,
      OneTimeCodes codes,
      Cases cases,
      Gels gels,
      Clock clock) {

    static Parts of(Store store, Clock clock, Chance chance) {
      AuditTrail trail = AuditTrail.of(clock);
      return new Parts(
          store,
          trail,
          Accounts.of(store, trail, clock, chance),
          OneTimeCodes.of(store, trail, clock, chance),
          Cases.of(store, trail, clock, chance),
          Gels.of(store, trail, clock, chance),
          clock);
    }

    Desk desk(Frame frame, Rules rules) {
      Medicine medicine = new Medicine(rules, software(), clock, ZoneId.systemDefault(), gels);
      return new Desk(
          frame,
          Troubles.of(frame),
          accounts,
          cases,
          Reports.of(store, trail, clock),
          Drafts.of(store, clock),
          gels,
          medicine,
          RecentCases.of(medicine),
          Summaries.of(medicine));
    }

    private static String software() {
      return "Cistern "
          + Optional.ofNullable(WebClinic.class.getPackage().getImplementationVersion())
              .orElse("development");
    }
  }

  /** Starts it. */
  static WebClinic start(Store store, Clock clock, Chance chance, Serving serving) {
    Parts parts = Parts.of(store, clock, chance);
    Frame frame = new Frame(serving.isInvented(), serving.rules().facts().policy());
    Desk desk = parts.desk(frame, serving.rules());
    Routes routes = Routes.of(routes(parts, desk), parts.accounts(), store, parts.trail());
    PassingFolder scratch = PassingFolder.make("cistern-web");
    try {
      return new WebClinic(
          scratch, context(serving, scratch, frame, routes, clock), parts, desk, routes);
    } catch (RuntimeException e) {
      scratch.close();
      throw e;
    }
  }

  private static ConfigurableApplicationContext context(
      Serving serving, PassingFolder scratch, Frame frame, Routes routes, Clock clock) {
    return new SpringApplicationBuilder(WebWiring.class)
        .bannerMode(Banner.Mode.OFF)
        .logStartupInfo(false)
        .properties(properties(serving))
        .properties("server.tomcat.basedir=" + scratch.path())
        .properties(
            "server.servlet.session.cookie.secure=" + serving.gateway().isPresent(),
            "server.forward-headers-strategy=none")
        .initializers(
            (GenericApplicationContext c) -> {
              c.registerBean(Frame.class, () -> frame);
              c.registerBean(Routes.class, () -> routes);
              boolean isBehind = serving.gateway().isPresent();
              c.registerBean(Guard.class, () -> Guard.of(frame, routes, isBehind, clock));
              serving.gateway().ifPresent(g -> c.registerBean(Gateway.class, () -> g));
              c.registerBean(Troubles.class, () -> Troubles.of(frame));
            })
        .run();
  }

  private static List<Route> routes(Parts parts, Desk desk) {
    Frame frame = desk.frame();
    List<Route> all = new ArrayList<>(Assets.routes());
    all.addAll(Entrance.of(frame, parts.accounts(), parts.codes(), parts.clock()).routes());
    all.addAll(Staff.of(frame, parts.accounts(), parts.codes()).routes());
    all.addAll(FactsScreen.of(frame, desk.medicine().facts()).routes());
    all.addAll(Trail.of(frame, parts.store(), parts.trail(), parts.accounts()).routes());
    all.addAll(Worklist.of(desk).routes());
    all.addAll(CaseScreen.of(desk).routes());
    all.addAll(UnreadableScreen.of(desk).routes());
    all.addAll(StepScreen.of(desk).routes());
    all.addAll(GelScreen.of(desk).routes());
    all.addAll(PasteScreen.of(desk).routes());
    all.addAll(SaysScreen.of(desk).routes());
    all.addAll(ReportScreen.of(desk).routes());
    all.addAll(CompareScreen.of(desk).routes());
    return all;
  }

  private static Map<String, Object> properties(Serving serving) {
    return Map.ofEntries(
        Map.entry("server.address", serving.address()),
        Map.entry("server.port", serving.port()),
        Map.entry("server.servlet.session.timeout", Setting.SESSION_MINUTES.number() + "m"),
        Map.entry("server.servlet.session.cookie.name", "cistern"),
        Map.entry("server.servlet.session.cookie.http-only", true),
        Map.entry("server.servlet.session.cookie.same-site", "lax"),
        Map.entry("server.servlet.session.tracking-modes", "cookie"),
        Map.entry("server.tomcat.max-http-form-post-size", Setting.UPLOAD_BYTES.number()),
        Map.entry("server.tomcat.max-swallow-size", 4 * Setting.PICTURE_BYTES.number()),
        Map.entry("spring.servlet.multipart.max-file-size", Setting.PICTURE_BYTES.number() + "B"),
        Map.entry(
            "spring.servlet.multipart.max-request-size",
            Setting.PICTURE_BYTES.number() + Setting.UPLOAD_BYTES.number() + "B"),
        Map.entry("server.shutdown", "graceful"),
        Map.entry("spring.main.register-shutdown-hook", false),
        Map.entry("logging.register-shutdown-hook", false),
        Map.entry("spring.jmx.enabled", false),
        Map.entry("logging.level.root", "warn"),
        Map.entry("logging.level.org.springframework.web", "error"));
  }

  /** The port on which it listens. */
  int port() {
    return context instanceof WebServerApplicationContext web && web.getWebServer() != null
        ? web.getWebServer().getPort()
        : 0;
  }

  Accounts accounts() {
    return accounts;
  }

  OneTimeCodes codes() {
    return codes;
  }

  Cases cases() {
    return desk.cases();
  }

  /** What its screens work with. */
  Desk desk() {
    return desk;
  }

  Routes routes() {
    return routes;
  }

  @Override
  public void close() {
    desk.summaries().close();
    context.close();
    scratch.close();
  }
}
