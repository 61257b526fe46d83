package cistern.clinic.web;

import cistern.clinic.store.StoreTrouble;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * Pages for what went wrong. Neither page nor log holds anything that was typed or kept: only the
 * kind of a failure and the place in the program.
 */
public final class Troubles {

  private static final Logger LOG = LoggerFactory.getLogger(Troubles.class);

  private final Frame frame;

  private Troubles(Frame frame) {
    this.frame = frame;
  }

  /** Pages in a frame. */
  public static Troubles of(Frame frame) {
    return new Troubles(frame);
  }

  /** The page for a failure. */
  ServerResponse answer(Visit visit, Throwable failure) {
    if (failure instanceof ShownInstead instead) {
      return instead.page();
    }
    Optional<StoreTrouble> trouble = StoreTrouble.of(failure);
    if (trouble.isPresent()) {
      LOG.warn("The store: {}", trouble.get());
      return page(
          visit,
          HttpStatus.SERVICE_UNAVAILABLE,
          trouble.get().text() + " What you typed stays in this tab: go back.");
    }
    if (failure instanceof AsyncRequestNotUsableException) {
      LOG.debug("A browser left before its answer was written");
      return page(visit, HttpStatus.INTERNAL_SERVER_ERROR, "The answer was not waited for.");
    }
    StackTraceElement[] trace = failure.getStackTrace();
    LOG.error(
        "A fault in the program: {} at {}",
        failure.getClass().getName(),
        trace.length == 0 ? "an unknown place" : trace[0]);
    return page(
        visit,
        HttpStatus.INTERNAL_SERVER_ERROR,
        "A fault in the program kept this page from being made. Nothing was changed. Go back and"
            + " try again; if it happens twice, tell the person who runs the program.");
  }

  /** The page for something that is not there. */
  public ServerResponse missing(Visit visit) {
    return page(visit, HttpStatus.NOT_FOUND, "There is no such page.");
  }

  /** The page for something that was changed by somebody meanwhile. */
  public ServerResponse changed(Visit visit, String back) {
    String html =
        frame.toHtml(
            visit,
            "Not done",
            cistern.report.markup.Element.of("h1", "This was not done"),
            Html.paragraph(
                "The case was changed meanwhile, so nothing was undone. Look at what stands now."),
            Html.paragraph("").with(Html.link(back, "To the case")));
    return Answers.page(HttpStatus.CONFLICT, html);
  }

  private ServerResponse page(Visit visit, HttpStatus status, String text) {
    String html =
        frame.toHtml(
            visit,
            "Not done",
            cistern.report.markup.Element.of("h1", "This was not done"),
            Html.paragraph(text),
            Html.paragraph("").with(Html.link("/", "To the start")));
    return Answers.page(status, html);
  }
}
