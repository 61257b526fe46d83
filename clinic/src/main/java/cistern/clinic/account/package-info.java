/**
 * Who may come in and what each role may do. Uses the store, the audit trail and a password hash.
 */
@NullMarked
package cistern.clinic.account;

import org.jspecify.annotations.NullMarked;
