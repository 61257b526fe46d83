package cistern.clinic.web;

import cistern.report.paper.PageFrame;
import java.util.List;

/** The style sheet, the script and the icon of all screens, which hold nothing of anybody. */
public final class Assets {

  private Assets() {}

  /** Their routes. */
  public static List<Route> routes() {
    String style = Frame.STYLE.text();
    String script = Frame.SCRIPT.text();
    String icon = PageFrame.read(Frame.class, "icon.svg");
    return List.of(
        Route.openGet("/look.css", v -> Responses.text("text/css", style)),
        Route.openGet("/clinic.js", v -> Responses.text("text/javascript", script)),
        Route.openGet("/icon.svg", v -> Responses.text("image/svg+xml", icon)),
        Route.openGet("/favicon.ico", v -> Responses.nothing()));
  }
}
