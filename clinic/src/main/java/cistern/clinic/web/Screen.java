package cistern.clinic.web;

import org.springframework.web.servlet.function.ServerResponse;

/** What answers a visit. */
@FunctionalInterface
public interface Screen {

  /** The answer to a visit. */
  ServerResponse answer(PageRequest visit);
}
