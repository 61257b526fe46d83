package cistern.clinic.launch;

import cistern.clinic.account.Accounts;
import cistern.clinic.account.Chance;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.cases.Cases;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Reports;
import cistern.clinic.casework.AnswerScreen;
import cistern.clinic.casework.CallScreen;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.casework.CaseScreen;
import cistern.clinic.casework.CompareScreen;
import cistern.clinic.casework.InterpretationScreen;
import cistern.clinic.casework.PasteScreen;
import cistern.clinic.casework.ReportScreen;
import cistern.clinic.casework.StepScreen;
import cistern.clinic.casework.UnreadableScreen;
import cistern.clinic.casework.WhatIfScreen;
import cistern.clinic.casework.gel.GelScreen;
import cistern.clinic.entrance.Entrance;
import cistern.clinic.facts.FactsScreen;
import cistern.clinic.facts.RulesScreen;
import cistern.clinic.figures.FiguresScreen;
import cistern.clinic.gel.Gels;
import cistern.clinic.house.RuleBook;
import cistern.clinic.setting.Setting;
import cistern.clinic.staff.Staff;
import cistern.clinic.status.LaboratoryUnits;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.RecentCases;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.status.Summaries;
import cistern.clinic.store.PassingFolder;
import cistern.clinic.store.Store;
import cistern.clinic.trail.Trail;
import cistern.clinic.web.Assets;
import cistern.clinic.web.ErrorPages;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Gateway;
import cistern.clinic.web.Guard;
import cistern.clinic.web.Route;
import cistern.clinic.web.Routes;
import cistern.clinic.worklist.Worklist;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.boot.Banner;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;

/** The running web application on one open store. */
final class WebClinic implements AutoCloseable {

  private final PassingFolder scratch;
  private final ConfigurableApplicationContext web;
  private final Accounts accounts;
  private final OneTimeCodes codes;
  private final CaseContext context;
  private final Routes routes;

  private WebClinic(
      PassingFolder scratch,
      ConfigurableApplicationContext web,
      Parts parts,
      CaseContext context,
      Routes routes) {
    this.scratch = scratch;
    this.web = web;
    this.accounts = parts.accounts();
    this.codes = parts.codes();
    this.context = context;
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
      String address,
      int port,
      boolean isInvented,
      RulesInForce rules,
      Optional<Gateway> gateway) {}

  /** What stands on the store. */
  private record Parts(
      Store store,
      AuditTrail trail,
      Accounts accounts,
      OneTimeCodes codes,
      Cases cases,
      Gels gels,
      RuleBook rules,
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
          RuleBook.of(store, trail, clock),
          clock);
    }

    Medicine medicine(RulesInForce rules) {
      return new Medicine(rules, software(), clock, ZoneId.systemDefault(), gels);
    }

    CaseContext context(Frame frame, Medicine medicine) {
      return new CaseContext(
          frame,
          ErrorPages.of(frame),
          accounts,
          cases,
          Reports.of(store, trail, clock),
          Drafts.of(store, clock),
          gels,
          medicine,
          RecentCases.of(medicine),
          Summaries.of(store, medicine),
          LaboratoryUnits.of(cases, medicine));
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
    parts.accounts().chain();
    Medicine medicine = parts.medicine(serving.rules().with(parts.rules().inForce()));
    Frame frame = new Frame(serving.isInvented(), () -> medicine.facts().policy());
    CaseContext context = parts.context(frame, medicine);
    List<Route> all = routes(parts, context);
    all.addAll(RulesScreen.of(context, parts.rules(), serving.rules()).routes());
    Routes routes = Routes.of(all, parts.accounts(), store, parts.trail());
    PassingFolder scratch = PassingFolder.make("cistern-web");
    try {
      return new WebClinic(
          scratch, opened(serving, scratch, frame, routes, clock), parts, context, routes);
    } catch (RuntimeException e) {
      scratch.close();
      throw e;
    }
  }

  private static ConfigurableApplicationContext opened(
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
              c.registerBean(ErrorPages.class, () -> ErrorPages.of(frame));
            })
        .run();
  }

  private static List<Route> routes(Parts parts, CaseContext context) {
    Frame frame = context.frame();
    List<Route> all = new ArrayList<>(Assets.routes());
    all.addAll(Entrance.of(frame, parts.accounts(), parts.codes(), parts.clock()).routes());
    all.addAll(Staff.of(frame, parts.accounts(), parts.codes()).routes());
    all.addAll(FactsScreen.of(frame, context.medicine()).routes());
    all.addAll(Trail.of(frame, parts.store(), parts.trail(), parts.accounts()).routes());
    all.addAll(Worklist.of(context).routes());
    all.addAll(FiguresScreen.of(context).routes());
    UnreadableScreen unreadable = UnreadableScreen.of(context);
    all.addAll(unreadable.routes());
    Stream.of(
            CaseScreen.of(context).routes(),
            AnswerScreen.of(context).routes(),
            CallScreen.of(context).routes(),
            StepScreen.of(context).routes(),
            GelScreen.of(context).routes(),
            PasteScreen.of(context).routes(),
            InterpretationScreen.of(context).routes(),
            WhatIfScreen.of(context).routes(),
            ReportScreen.of(context).routes(),
            CompareScreen.of(context).routes())
        .map(unreadable::around)
        .forEach(all::addAll);
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
        // A slow sender then waits on its own thread, and takes none from the others.
        Map.entry("spring.threads.virtual.enabled", true),
        Map.entry("server.compression.enabled", true),
        Map.entry("server.shutdown", "graceful"),
        Map.entry("spring.main.register-shutdown-hook", false),
        Map.entry("logging.register-shutdown-hook", false),
        Map.entry("spring.jmx.enabled", false),
        Map.entry("logging.level.root", "warn"),
        Map.entry("logging.level.org.springframework.web", "error"));
  }

  /** The port on which it listens. */
  int port() {
    return web instanceof WebServerApplicationContext server && server.getWebServer() != null
        ? server.getWebServer().getPort()
        : 0;
  }

  Accounts accounts() {
    return accounts;
  }

  OneTimeCodes codes() {
    return codes;
  }

  Cases cases() {
    return context.cases();
  }

  /** What its screens work with. */
  CaseContext context() {
    return context;
  }

  Routes routes() {
    return routes;
  }

  @Override
  public void close() {
    context.summaries().close();
    web.close();
    scratch.close();
  }
}
