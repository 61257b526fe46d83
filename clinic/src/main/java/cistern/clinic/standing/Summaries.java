package cistern.clinic.standing;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * What lists show of every case, held for some minutes: a list of many would otherwise interpret
 * them all again each time. Of very many a page waits for some only, and the others are read behind
 * it.
 */
public final class Summaries implements AutoCloseable {

  /** The name of the threads that read. */
  static final String READER = "case-reader";

  private final Medicine medicine;
  private final Map<String, Held> byCase = new ConcurrentHashMap<>();
  private final Map<String, Reading> readings = new ConcurrentHashMap<>();
  private final ExecutorService readers;

  private Summaries(Medicine medicine) {
    this.medicine = medicine;
    this.readers =
        Executors.newFixedThreadPool(
            Math.max(1, Runtime.getRuntime().availableProcessors() - 1),
            Thread.ofPlatform().daemon().name(READER).factory());
  }

  /** None yet. */
  public static Summaries of(Medicine medicine) {
    return new Summaries(medicine);
  }

  /** What makes a summary old: another version, another signature, some minutes. */
  private record Of(long number, OptionalLong signed, long minutes) {}

  private record Held(Of of, Summary summary) {}

  private record Reading(Of of, CompletableFuture<Void> end) {}

  /**
   * A case of which a list shows something.
   *
   * @param version as it stands
   * @param signed the version that was signed last, if one was
   */
  public record Asked(CaseVersion version, OptionalLong signed) {}

  /**
   * What is known of some cases.
   *
   * @param summaries of the cases that were read; of some of them as they stood some minutes ago
   * @param unread how many are still being read, for the first time or again
   */
  public record Known(List<Summary> summaries, int unread) {

    /** Copies the summaries. */
    public Known {
      summaries = List.copyOf(summaries);
    }
  }

  private Of key(Asked asked) {
    long fresh = Duration.ofMinutes(Setting.SUMMARY_MINUTES.number()).toMillis();
    return new Of(asked.version().number(), asked.signed(), medicine.clock().millis() / fresh);
  }

  /** The summary of a case as it stands. */
  public Summary of(Asked asked) {
    return read(asked, key(asked)).summary();
  }

  private Held read(Asked asked, Of of) {
    Held held = byCase.get(asked.version().caseId());
    if (held == null || !held.of().equals(of)) {
      held = new Held(of, written(asked.version(), asked.signed()));
      byCase.put(asked.version().caseId(), held);
    }
    return held;
  }

  private Summary written(CaseVersion version, OptionalLong signed) {
    try {
      OpenCase open = OpenCase.of(version, medicine);
      return Summary.of(open, Standing.of(open, medicine, signed));
    } catch (UnreadableCase e) {
      return Summary.unreadable(version);
    }
  }

  /**
   * What is known of some cases, in their order, once they are all read or a time has passed; those
   * that are not read then are read on.
   */
  public Known known(List<Asked> all, Duration patience) {
    List<Of> keys = all.stream().map(this::key).toList();
    List<CompletableFuture<Void>> ends = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Held held = byCase.get(all.get(i).version().caseId());
      if (held == null || !held.of().equals(keys.get(i))) {
        ends.add(begun(all.get(i), keys.get(i)));
      }
    }
    await(ends, patience);
    List<Summary> summaries = new ArrayList<>();
    int unread = 0;
    for (int i = 0; i < all.size(); i++) {
      Held held = byCase.get(all.get(i).version().caseId());
      if (held != null) {
        summaries.add(held.summary());
      }
      unread += held == null || !held.of().equals(keys.get(i)) ? 1 : 0;
    }
    return new Known(summaries, unread);
  }

  /** The reading of a case, which may have begun for somebody else. */
  private CompletableFuture<Void> begun(Asked asked, Of of) {
    String id = asked.version().caseId();
    return readings
        .compute(
            id,
            (key, before) ->
                before != null && before.of().equals(of) && !before.end().isDone()
                    ? before
                    : new Reading(of, CompletableFuture.runAsync(() -> read(asked, of), readers)))
        .end();
  }

  private static void await(List<CompletableFuture<Void>> ends, Duration patience) {
    try {
      CompletableFuture.allOf(ends.toArray(CompletableFuture[]::new))
          .get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException failure
          ? failure
          : new IllegalStateException(e.getCause());
    }
  }

  /** Ends the reading; what was not read is read when it is asked for again. */
  @Override
  public void close() {
    readers.shutdownNow();
  }
}
