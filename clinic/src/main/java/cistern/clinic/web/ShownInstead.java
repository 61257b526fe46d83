package cistern.clinic.web;

import org.springframework.web.servlet.function.ServerResponse;

/** A page that is shown in place of the one that was asked for and cannot be made. */
public final class ShownInstead extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient ServerResponse page;

  /** In place of whatever was asked for. */
  public ShownInstead(ServerResponse page) {
    super("another page is shown");
    this.page = page;
  }

  ServerResponse page() {
    return page;
  }
}
