package cistern.clinic.web;

import cistern.clinic.setting.Setting;
import cistern.clinic.store.StoreTrouble;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * Pages for what went wrong. Neither page nor log holds anything that was typed or kept: only the
 * kind of a failure and the place in the program.
 */
public final class ErrorPages {

  private static final Logger LOG = LoggerFactory.getLogger(ErrorPages.class);

  /** What is said of a form or a file that is not read because of its size. */
  static final String TOO_LARGE =
      "What was sent is larger than what is taken: a picture may have "
          + Setting.PICTURE_BYTES.number() / 1_000_000
          + " MB. Nothing was changed.";

  private static final String NOT_A_FORM =
      "What was sent could not be read as a form. Nothing was changed.";

  private final Frame frame;

  private ErrorPages(Frame frame) {
    this.frame = frame;
  }

  /** Pages in a frame. */
  public static ErrorPages of(Frame frame) {
    return new ErrorPages(frame);
  }

  /** The page for a failure. */
  ServerResponse answer(PageRequest visit, Throwable failure) {
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
    log(failure);
    return page(
        visit,
        HttpStatus.INTERNAL_SERVER_ERROR,
        "A fault in the program kept this page from being made. Nothing was changed. Go back and"
            + " try again; if it happens twice, tell the person who runs the program.");
  }

  /** The page for what is too large to be read, or is no form. */
  ServerResponse unreadable(PageRequest visit, HttpStatusCode status) {
    return page(
        visit,
        HttpStatus.valueOf(status.value()),
        status.value() == HttpStatus.CONTENT_TOO_LARGE.value() ? TOO_LARGE : NOT_A_FORM);
  }

  /** Writes the kind of a fault and its place to the log. */
  public void log(Throwable failure) {
    Throwable cause = failure;
    while (cause.getCause() != null) {
      cause = cause.getCause();
    }
    StackTraceElement[] trace = cause.getStackTrace();
    LOG.error(
        "A fault in the program: {} at {}",
        cause.getClass().getName(),
        trace.length == 0 ? "an unknown place" : trace[0]);
  }

  /** The page for something that is not there. */
  public ServerResponse missing(PageRequest visit) {
    return page(visit, HttpStatus.NOT_FOUND, "There is no such page.");
  }

  /** The page for something that was changed by somebody meanwhile. */
  public ServerResponse changed(PageRequest visit, String back) {
    String html =
        frame.toHtml(
            visit,
            "Not done",
            cistern.report.markup.Element.of("h1", "This was not done"),
            Html.paragraph(
                "The case was changed meanwhile, so nothing was undone. Look at what stands now."),
            Html.paragraph("").with(Html.link(back, "To the case")));
    return Responses.page(HttpStatus.CONFLICT, html);
  }

  private ServerResponse page(PageRequest visit, HttpStatus status, String text) {
    String html =
        frame.toHtml(
            visit,
            "Not done",
            cistern.report.markup.Element.of("h1", "This was not done"),
            Html.paragraph(text),
            Html.paragraph("").with(Html.link("/", "To the start")));
    return Responses.page(status, html);
  }
}
