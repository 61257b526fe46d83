package cistern.clinic.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/**
 * The server that speaks HTTPS and stands before this one. What it says of a caller is believed,
 * and only what it added itself: whoever calls may send the same headers, and they then stand
 * before its own. It comes before everything else, so that all see who calls.
 */
@Order(Ordered.HIGHEST_PRECEDENCE)
public final class Gateway implements Filter {

  private static final List<Network> THIS_MACHINE =
      List.of(Network.parse("127.0.0.0/8"), Network.parse("::1"));

  private final List<Network> named;

  private Gateway(List<Network> named) {
    this.named = List.copyOf(named);
  }

  /**
   * A server.
   *
   * @param named its addresses, and those of servers before it; none when it is on this machine
   */
  public static Gateway of(List<Network> named) {
    return new Gateway(named);
  }

  @Override
  public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
      throws IOException, ServletException {
    boolean isBelieved =
        Network.address(request.getRemoteAddr())
            .filter(peer -> isIn(named.isEmpty() ? THIS_MACHINE : named, peer))
            .isPresent();
    chain.doFilter(
        isBelieved && request instanceof HttpServletRequest http
            ? new Passed(http, caller(http), isHttps(http))
            : request,
        response);
  }

  private static boolean isIn(List<Network> networks, InetAddress address) {
    return networks.stream().anyMatch(n -> n.contains(address));
  }

  /** The last that is not a named server's: what stands before it, the caller may have written. */
  private String caller(HttpServletRequest request) {
    String caller = request.getRemoteAddr();
    for (String value : values(request, "X-Forwarded-For").reversed()) {
      Optional<InetAddress> address = Network.address(value);
      if (address.isEmpty()) {
        return caller;
      }
      caller = address.get().getHostAddress();
      if (!isIn(named, address.get())) {
        return caller;
      }
    }
    return caller;
  }

  private static boolean isHttps(HttpServletRequest request) {
    List<String> values = values(request, "X-Forwarded-Proto");
    return !values.isEmpty() && values.getLast().equalsIgnoreCase("https");
  }

  /** All values of a header, in the order in which servers added them. */
  private static List<String> values(HttpServletRequest request, String header) {
    List<String> values = new ArrayList<>();
    for (String line : Collections.list(request.getHeaders(header))) {
      Arrays.stream(line.split(",", -1)).map(String::strip).forEach(values::add);
    }
    return values;
  }

  /** A request as it came to the other server. */
  private static final class Passed extends HttpServletRequestWrapper {
    private final String caller;
    private final boolean isHttps;

    Passed(HttpServletRequest request, String caller, boolean isHttps) {
      super(request);
      this.caller = caller;
      this.isHttps = isHttps;
    }

    @Override
    public String getRemoteAddr() {
      return caller;
    }

    @Override
    public String getRemoteHost() {
      return caller;
    }

    @Override
    public boolean isSecure() {
      return isHttps;
    }

    @Override
    public String getScheme() {
      return isHttps ? "https" : "http";
    }
  }
}
