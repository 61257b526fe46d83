package cistern.clinic.web;

import java.math.BigInteger;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Addresses of machines that begin alike.
 *
 * @param first any of them
 * @param bits how many bits they have in common, from the left
 */
public record Network(InetAddress first, int bits) {

  private static final Pattern WRITTEN = Pattern.compile("([^/]+)(?:/(\\d{1,3}))?");

  /** An address as proxies write it, with or without its port. */
  private static final Pattern WITH_PORT =
      Pattern.compile("\\[([^\\]]+)\\](?::\\d+)?|([^:]+):\\d+");

  /**
   * A network of a text: one address, or an address and its bits behind a slash.
   *
   * @throws IllegalArgumentException when it is neither
   */
  public static Network parse(String text) {
    Matcher parts = WRITTEN.matcher(text);
    Optional<InetAddress> address = parts.matches() ? address(parts.group(1)) : Optional.empty();
    if (address.isEmpty()) {
      throw new IllegalArgumentException(
          "an address such as 10.0.0.5, or a network such as 10.0.0.0/24");
    }
    int length = address.get().getAddress().length * Byte.SIZE;
    int bits = parts.group(2) == null ? length : Integer.parseInt(parts.group(2));
    if (bits > length) {
      throw new IllegalArgumentException("such an address has " + length + " bits");
    }
    return new Network(address.get(), bits);
  }

  /** The address of a text; no name is looked up. */
  static Optional<InetAddress> address(String text) {
    Matcher parts = WITH_PORT.matcher(text);
    String bare = text;
    if (parts.matches()) {
      bare = parts.group(1) == null ? parts.group(2) : parts.group(1);
    }
    try {
      return Optional.of(InetAddress.ofLiteral(bare));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  boolean contains(InetAddress address) {
    byte[] one = first.getAddress();
    byte[] other = address.getAddress();
    int rest = one.length * Byte.SIZE - bits;
    return one.length == other.length
        && new BigInteger(1, one)
            .shiftRight(rest)
            .equals(new BigInteger(1, other).shiftRight(rest));
  }

  /**
   * From where somebody calls, as tries are counted: an address, or the network of it that one
   * caller has alone, so that the many addresses of one line are not many callers.
   *
   * @param bits of an address of the newer kind that belong to one caller
   */
  public static String caller(String address, int bits) {
    return address(address)
        .filter(Inet6Address.class::isInstance)
        .map(a -> new BigInteger(1, a.getAddress()).shiftRight(2 * Long.SIZE - bits).toString(16))
        .map(network -> network + "/" + bits)
        .orElse(address);
  }
}
