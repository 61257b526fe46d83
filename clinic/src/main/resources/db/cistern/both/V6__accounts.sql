-- Counts what ends the sessions of an account: a new password, a one-time code.
alter table account add column generation bigint not null default 0;

-- The audit trail is read by case and by person.
create index audit_subject on audit (subject, number);
create index audit_account on audit (account, number);
