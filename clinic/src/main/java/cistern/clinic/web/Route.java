package cistern.clinic.web;

import cistern.clinic.account.Permission;
import org.springframework.http.HttpMethod;

/**
 * One way into the application. Whatever is not a route is refused.
 *
 * @param method GET or POST
 * @param path with names in braces, such as {@code /cases/{id}}
 * @param access who may use it
 * @param screen what answers
 */
public record Route(HttpMethod method, String path, Access access, Screen screen) {

  /** The same for the same people, with another answer. */
  public Route withScreen(Screen other) {
    return new Route(method, path, access, other);
  }

  /** A page for whom a role allows something. */
  public static Route get(String path, Permission permission, Screen screen) {
    return new Route(HttpMethod.GET, path, new Access.Needs(permission), screen);
  }

  /** A form sent by whom a role allows something. */
  public static Route post(String path, Permission permission, Screen screen) {
    return new Route(HttpMethod.POST, path, new Access.Needs(permission), screen);
  }

  /** A page for everybody. */
  public static Route openGet(String path, Screen screen) {
    return new Route(HttpMethod.GET, path, new Access.Everybody(), screen);
  }

  /** A form that everybody may send. */
  public static Route openPost(String path, Screen screen) {
    return new Route(HttpMethod.POST, path, new Access.Everybody(), screen);
  }
}
