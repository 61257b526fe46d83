package cistern.clinic.trail;

import cistern.clinic.account.Account;
import cistern.clinic.account.Accounts;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Everybody who has or had an account, as the trail names them.
 *
 * @param people by name for signing in
 * @param byId the same, by identifier
 */
record TrailNames(List<Account> people, Map<String, Account> byId) {

  TrailNames {
    people = List.copyOf(people);
    byId = Map.copyOf(byId);
  }

  static TrailNames of(Accounts accounts) {
    List<Account> all = accounts.all();
    return new TrailNames(
        all, all.stream().collect(Collectors.toMap(Account::id, Function.identity())));
  }

  boolean isPerson(String id) {
    return byId.containsKey(id);
  }

  /** The name as it stands under a report; the identifier when nobody has it. */
  String fullName(String id) {
    Account account = byId.get(id);
    return account == null ? id : account.fullName();
  }
}
