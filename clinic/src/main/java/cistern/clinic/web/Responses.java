package cistern.clinic.web;

import cistern.clinic.setting.Setting;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.servlet.function.ServerResponse;

/** The few kinds of answer. */
public final class Responses {

  private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);

  private Responses() {}

  /** A page. */
  public static ServerResponse page(HttpStatus status, String html) {
    return ServerResponse.status(status).contentType(HTML).body(html);
  }

  /** A page that was found. */
  public static ServerResponse page(String html) {
    return page(HttpStatus.OK, html);
  }

  /** Another page, which the browser asks for. */
  public static ServerResponse see(String path) {
    return ServerResponse.seeOther(URI.create(path)).build();
  }

  /** A text of the program itself, such as a style sheet; its address changes with its content. */
  public static ServerResponse text(String type, String text) {
    return ServerResponse.ok()
        .cacheControl(
            CacheControl.maxAge(Duration.ofDays(Setting.ASSET_DAYS.number())).cachePublic())
        .contentType(new MediaType(MediaType.parseMediaType(type), StandardCharsets.UTF_8))
        .body(text);
  }

  /** Nothing, and nothing is wrong: browsers ask by themselves for an icon of the old form. */
  static ServerResponse nothing() {
    return ServerResponse.noContent().build();
  }

  /** A picture inside a page. */
  public static ServerResponse picture(byte[] png) {
    return ServerResponse.ok().contentType(MediaType.IMAGE_PNG).body(png);
  }

  /** Bytes that the browser saves under a name or shows. */
  public static ServerResponse file(String type, String name, byte[] bytes) {
    return ServerResponse.ok()
        .contentType(MediaType.parseMediaType(type))
        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
        .body(bytes);
  }
}
