package cistern.criteria;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * What was found for some keys, so that it is not looked for again: the first thousand of them. A
 * value follows from its key alone, so that it does not matter who looks first.
 */
final class Kept<K, V> {

  private static final int MOST = 1024;

  private final Map<K, V> byKey = new ConcurrentHashMap<>();

  /** The value of a key, looked for when it is not kept. */
  V of(K key, Function<K, V> look) {
    V kept = byKey.get(key);
    if (kept != null) {
      return kept;
    }
    V value = look.apply(key);
    if (byKey.size() < MOST) {
      byKey.put(key, value);
    }
    return value;
  }
}
