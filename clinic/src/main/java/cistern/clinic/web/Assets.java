package cistern.clinic.web;

import cistern.report.page.PageFrame;
import java.util.List;

/** The style sheet and the script of all screens, which hold nothing of anybody. */
public final class Assets {

  private Assets() {}

  /** Their routes. */
  public static List<Route> routes() {
    String style = Frame.style();
    String script = PageFrame.read(Frame.class, "clinic.js");
    return List.of(
        Route.openGet("/look.css", v -> Answers.text("text/css", style)),
        Route.openGet("/clinic.js", v -> Answers.text("text/javascript", script)));
  }
}
